namespace Laydown.Plan.Upkeep;

/// <summary>A press as somebody last read it.</summary>
/// <param name="PressId">The press.</param>
/// <param name="At">When it was read.</param>
/// <param name="Tanks">Its tanks; one that is not named has the level of the press description.</param>
/// <param name="Counters">Care tasks; of one that is not named nothing is known.</param>
/// <param name="LastUsed">When the lines last moved ink; null for the instant of the reading.</param>
public sealed record PressState(
    string PressId, DateTimeOffset At, IReadOnlyList<TankState> Tanks, IReadOnlyList<CareCounter> Counters, DateTimeOffset? LastUsed = null);
