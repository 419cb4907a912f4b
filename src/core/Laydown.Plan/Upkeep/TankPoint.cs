namespace Laydown.Plan.Upkeep;

/// <summary>A corner of the line of a tank's level over time; between two corners it is straight, two at one instant are a step.</summary>
/// <param name="At">When.</param>
/// <param name="LevelMl">Level, ml.</param>
public sealed record TankPoint(DateTimeOffset At, double LevelMl);
