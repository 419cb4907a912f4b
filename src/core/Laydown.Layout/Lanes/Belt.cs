using Laydown.Layout.Sheets;

namespace Laydown.Layout.Lanes;

/// <summary>The belt as far as laying needs it.</summary>
/// <param name="WidthMm">Width of the belt, mm.</param>
/// <param name="MaxFeedMm">Longest sheet along the feed, mm.</param>
/// <param name="Zones">Vacuum zones, at most 16, not overlapping.</param>
/// <param name="LaysMm">Where a sheet's near side can be laid, mm across the belt; at least one.</param>
/// <param name="MaxLanes">Most lanes side by side; 0 counts as 1 for boards.</param>
/// <param name="LaneGapMm">Least distance between two lanes, mm.</param>
/// <param name="HoldSharePercent">Share of a sheet's width that must lie over open zones, percent (common practice, no source).</param>
/// <param name="UnheldStripMm">Widest strip at a sheet's side that may lie over no open zone, mm (common practice, no source).</param>
/// <param name="Side">Where the one who loads stands.</param>
/// <param name="PinsMm">Where pins of the front lay can stand, mm across the belt; null where a bar along the whole belt takes their place.</param>
/// <param name="PinInsetMm">How far a pin stands from a sheet's sides at least, mm (common practice, no source).</param>
/// <param name="PinSpreadPercent">Share of a sheet's width by which its outer two pins are apart at least, percent (common practice, no source).</param>
public sealed record Belt(
    double WidthMm,
    double MaxFeedMm,
    IReadOnlyList<BeltZone> Zones,
    IReadOnlyList<double> LaysMm,
    int MaxLanes,
    double LaneGapMm = 10,
    double HoldSharePercent = 80,
    double UnheldStripMm = 60,
    LoadSide Side = LoadSide.Front,
    IReadOnlyList<double>? PinsMm = null,
    double PinInsetMm = 10,
    double PinSpreadPercent = 50);
