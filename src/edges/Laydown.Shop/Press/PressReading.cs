using Laydown.Plan.Upkeep;

namespace Laydown.Shop.Press;

/// <summary>What somebody read or did at a press.</summary>
/// <param name="Tanks">Tanks as read; those not named keep what was written.</param>
/// <param name="PouredMl">Ink poured since the last reading, ml by tank; it makes what was used known.</param>
/// <param name="PrintHours">Hours printed since the last reading.</param>
/// <param name="Done">Care tasks that were done, by the id of their rule.</param>
/// <param name="Packs">Ink on the shelf as it stands now; null to leave it as it was.</param>
public sealed record PressReading(
    IReadOnlyList<TankState>? Tanks = null, IReadOnlyDictionary<string, double>? PouredMl = null, double PrintHours = 0, IReadOnlyList<string>? Done = null, IReadOnlyList<InkPack>? Packs = null);
