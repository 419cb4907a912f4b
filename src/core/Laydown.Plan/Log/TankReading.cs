namespace Laydown.Plan.Log;

/// <summary>Level of a tank as read.</summary>
/// <param name="TankId">The tank.</param>
/// <param name="LevelMl">Level, ml; 0 to the capacity.</param>
public sealed record TankReading(string TankId, double LevelMl);
