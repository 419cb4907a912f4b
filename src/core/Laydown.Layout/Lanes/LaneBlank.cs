using Laydown.Measures;

namespace Laydown.Layout.Lanes;

/// <summary>Blanks of one size that are to go through lanes of their own.</summary>
/// <param name="Id">What they are called in lanes and refusals.</param>
/// <param name="Size">Size of a blank, mm.</param>
/// <param name="Count">How many; at least 1.</param>
/// <param name="MayTurn">Whether they may lie turned; then all of them do.</param>
public sealed record LaneBlank(string Id, SizeMm Size, int Count, bool MayTurn = false);
