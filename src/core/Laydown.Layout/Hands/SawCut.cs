using Laydown.Measures;

namespace Laydown.Layout.Hands;

/// <summary>One cut from edge to edge of the part it goes through.</summary>
/// <param name="Stage">1 for the cuts through the whole sheet, 2 for those through what then lies apart, and so on.</param>
/// <param name="From">Where it begins, mm on the sheet.</param>
/// <param name="To">Where it ends, mm.</param>
public sealed record SawCut(int Stage, PointMm From, PointMm To);
