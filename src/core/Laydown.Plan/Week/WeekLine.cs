namespace Laydown.Plan.Week;

/// <summary>An ink line that may not stand for long: before a longer stop it is filled with storage fluid, after it with ink again.</summary>
/// <param name="LimitMinutes">Longest it may stand, minutes.</param>
/// <param name="FillMinutes">Emptying and filling with fluid, minutes.</param>
/// <param name="BackMinutes">Flushing and filling with ink again, minutes.</param>
/// <param name="StoreCents">Storage fluid and ink lost, cents.</param>
public sealed record WeekLine(int LimitMinutes, double FillMinutes, double BackMinutes, long StoreCents = 0);
