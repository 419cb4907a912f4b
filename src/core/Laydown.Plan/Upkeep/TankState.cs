namespace Laydown.Plan.Upkeep;

/// <summary>A tank as last read.</summary>
/// <param name="TankId">The tank.</param>
/// <param name="LevelMl">Ink in it, ml, 0 to its capacity.</param>
/// <param name="Lot">Lot of the ink that will expire first in it; null where nobody wrote it down.</param>
/// <param name="Expires">Last day that ink may be printed; null where nobody wrote it down.</param>
/// <param name="ReadAt">When the level was read; null for the instant of the press's whole reading.</param>
public sealed record TankState(string TankId, double LevelMl, string? Lot = null, DateOnly? Expires = null, DateTimeOffset? ReadAt = null);
