namespace Laydown.Shop.Week;

/// <summary>A run that a change would make late, or later than it is.</summary>
/// <param name="RunId">The run.</param>
/// <param name="LateMinutes">Minutes it would be late.</param>
/// <param name="LateNow">Minutes it is late now.</param>
public sealed record WeekLater(string RunId, int LateMinutes, int LateNow);
