namespace Laydown.Layout.Panels;

/// <summary>What panels along one axis must keep, in steps.</summary>
/// <param name="Length">Length to be covered; at least 1.</param>
/// <param name="Most">Longest panel; at least 1.</param>
/// <param name="Least">Shortest panel; at least two overlaps, at least 1.</param>
/// <param name="OverlapLeast">Least overlap; below 0 for a gap.</param>
/// <param name="OverlapMost">Most overlap.</param>
/// <param name="Widths">How long panels are to be.</param>
/// <param name="Given">Their lengths in order, where they are given.</param>
internal sealed record AxisRules(
    int Length, int Most, int Least, int OverlapLeast, int OverlapMost, PanelWidths Widths, IReadOnlyList<int> Given);
