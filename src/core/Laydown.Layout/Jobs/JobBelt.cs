using Laydown.Layout.Lanes;
using Laydown.Layout.Sheets;

namespace Laydown.Layout.Jobs;

/// <summary>The belt of a press that takes blanks in lanes: zones, lays, pins, and how quick it is.</summary>
/// <param name="WidthMm">Width of the belt, mm.</param>
/// <param name="MaxFeedMm">Longest blank along the feed, mm.</param>
/// <param name="LaysMm">Where a blank's near side can be laid, mm across the belt from its origin; at least one.</param>
/// <param name="MaxLanes">Most lanes side by side.</param>
/// <param name="Zones">Vacuum zones, at most 16, not overlapping; null or empty for a belt without.</param>
/// <param name="PinsMm">Where pins of the front lay can stand, mm across the belt; null where a bar along the whole belt takes their place.</param>
/// <param name="LaneGapMm">Least distance between two lanes, mm.</param>
/// <param name="HoldSharePercent">Share of a blank's width that must lie over open zones, percent.</param>
/// <param name="UnheldStripMm">Widest strip at a blank's side that may lie over no open zone, mm.</param>
/// <param name="PinInsetMm">How far a pin stands from a blank's sides at least, mm.</param>
/// <param name="PinSpreadPercent">Share of a blank's width by which its outer two pins are apart at least, percent.</param>
/// <param name="Side">Where the one who loads stands: that tells the order of loading.</param>
/// <param name="AnyOrder">Whether different blanks may lie in any order across the belt; else in that of the pieces, from its origin.</param>
/// <param name="MetresPerHour">How far the belt advances in an hour of printing, m; null where pieces per hour are not asked for.</param>
/// <param name="LoadSeconds">What one blank takes to lay, s; blanks are laid one after the other while the press prints.</param>
public sealed record JobBelt(
    double WidthMm,
    double MaxFeedMm,
    IReadOnlyList<double> LaysMm,
    int MaxLanes = 1,
    IReadOnlyList<BeltZone>? Zones = null,
    IReadOnlyList<double>? PinsMm = null,
    double LaneGapMm = 10,
    double HoldSharePercent = 80,
    double UnheldStripMm = 60,
    double PinInsetMm = 10,
    double PinSpreadPercent = 50,
    LoadSide Side = LoadSide.Front,
    bool AnyOrder = true,
    double? MetresPerHour = null,
    double LoadSeconds = 0)
{
    /// <summary>The belt as laying takes it.</summary>
    internal Belt ToBelt() => new(
        WidthMm, MaxFeedMm, Zones ?? [], LaysMm, MaxLanes, LaneGapMm, HoldSharePercent, UnheldStripMm, Side, PinsMm, PinInsetMm, PinSpreadPercent);
}
