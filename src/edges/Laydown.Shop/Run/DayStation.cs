namespace Laydown.Shop.Run;

/// <summary>One station of a day's work.</summary>
/// <param name="Name">The station: <c>orders</c>, <c>check</c>, <c>panels</c>, <c>plan</c>, <c>make</c>, <c>quote</c>.</param>
/// <param name="Seconds">How long it took, s; 0 while it is being done.</param>
/// <param name="Done">Whether it is done.</param>
/// <param name="Result">What came of it, in words; empty while it is being done.</param>
public sealed record DayStation(string Name, double Seconds, bool Done, string Result);
