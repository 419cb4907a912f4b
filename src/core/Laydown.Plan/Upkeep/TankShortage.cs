namespace Laydown.Plan.Upkeep;

/// <summary>A run during which a tank falls low or dry though it was full, or could not be topped up, at its start.</summary>
/// <param name="TankId">The tank.</param>
/// <param name="RunId">The run; null for care.</param>
/// <param name="LowAt">When the level reaches the low mark.</param>
/// <param name="DryAt">When the tank is empty; null where it is not.</param>
/// <param name="MissingMl">Ink that is not there when it is needed, ml.</param>
public sealed record TankShortage(string TankId, string? RunId, DateTimeOffset LowAt, DateTimeOffset? DryAt, double MissingMl);
