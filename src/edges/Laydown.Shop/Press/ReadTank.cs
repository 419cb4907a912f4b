namespace Laydown.Shop.Press;

/// <summary>A tank as somebody read it last.</summary>
/// <param name="TankId">The tank.</param>
/// <param name="LevelMl">Level, ml, 0 to its capacity.</param>
/// <param name="At">When it was read; null where nobody did yet and the level is that of the press's description.</param>
public sealed record ReadTank(string TankId, double LevelMl, DateTimeOffset? At);
