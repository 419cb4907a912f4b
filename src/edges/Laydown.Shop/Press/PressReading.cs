using Laydown.Plan.Upkeep;

namespace Laydown.Shop.Press;

/// <summary>What somebody read or did at a press.</summary>
/// <param name="Tanks">Tanks as read; those not named keep what was written. Lot and last day stay as written where neither is given; a lot of no letters is one that nobody knows.</param>
/// <param name="PouredMl">Ink poured since the last reading, ml by tank; it makes what was used known.</param>
/// <param name="PrintHours">Hours printed since the last reading.</param>
/// <param name="Done">Care tasks that were done, by the id of their rule.</param>
/// <param name="Packs">Ink on the shelf as it stands now; null to leave it as it was.</param>
/// <param name="FromShelf">Ink poured from lots of the shelf: the shelf holds less, the tank more where its level is not read as well.</param>
/// <param name="Shelf">Mark of the shelf that was looked at when <paramref name="Packs"/> were written; null to write them whatever it holds.</param>
public sealed record PressReading(
    IReadOnlyList<TankState>? Tanks = null,
    IReadOnlyDictionary<string, double>? PouredMl = null,
    double PrintHours = 0,
    IReadOnlyList<string>? Done = null,
    IReadOnlyList<InkPack>? Packs = null,
    IReadOnlyList<PouredInk>? FromShelf = null,
    string? Shelf = null);
