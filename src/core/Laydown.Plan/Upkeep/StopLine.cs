namespace Laydown.Plan.Upkeep;

/// <summary>An ink line that may not stand for long, as a stop is decided.</summary>
/// <param name="LimitMinutes">Longest it may stand, minutes, over 0.</param>
/// <param name="FillMinutes">Emptying and filling with storage fluid, minutes.</param>
/// <param name="BackMinutes">Flushing and filling with ink again, minutes.</param>
/// <param name="StoreCents">Storage fluid and ink lost, cents.</param>
public sealed record StopLine(int LimitMinutes, double FillMinutes, double BackMinutes, long StoreCents);
