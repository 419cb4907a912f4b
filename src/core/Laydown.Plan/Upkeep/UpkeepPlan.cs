using Laydown.Plan.Calendar;

namespace Laydown.Plan.Upkeep;

/// <summary>The upkeep of one press over a time.</summary>
/// <param name="PressId">The press.</param>
/// <param name="From">Start of the time.</param>
/// <param name="To">Its end.</param>
/// <param name="Tanks">Levels and top-ups of every tank, in the order of the press.</param>
/// <param name="Inks">What must be on hand and what to order, in the order of roles.</param>
/// <param name="Care">Care tasks, earliest first.</param>
/// <param name="LongStops">Stops longer than the lines may stand, earliest first.</param>
/// <param name="Warnings">What else must be known, in sentences, gravest first.</param>
/// <param name="Uses">The spans in which the press prints, earliest first.</param>
/// <param name="Maintenance">Maintenance windows of the press, earliest first; null in plans kept before there were any.</param>
public sealed record UpkeepPlan(
    string PressId,
    DateTimeOffset From,
    DateTimeOffset To,
    IReadOnlyList<TankPlan> Tanks,
    IReadOnlyList<InkOrder> Inks,
    IReadOnlyList<CareTask> Care,
    IReadOnlyList<LongStop> LongStops,
    IReadOnlyList<string> Warnings,
    IReadOnlyList<PressUse> Uses,
    IReadOnlyList<MaintenanceSpan>? Maintenance = null);
