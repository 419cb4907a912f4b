namespace Laydown.Shop.Week;

/// <summary>A run that somebody put at a time: it is not begun before.</summary>
/// <param name="RunId">The run.</param>
/// <param name="Start">When it is to begin.</param>
public sealed record WeekPin(string RunId, DateTimeOffset Start);
