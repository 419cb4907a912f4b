using Laydown.Measures;

namespace Laydown.Colour.Charts;

/// <summary>The form a chart is laid into.</summary>
/// <param name="Sheet">Board, or width of a roll and the length to use of it, mm.</param>
/// <param name="MarginMm">Border left free, mm.</param>
/// <param name="Patch">One patch, mm, each side at least 3 mm.</param>
/// <param name="GapMm">Bare stock between patches, mm.</param>
/// <param name="Way">How it is read.</param>
/// <param name="Seed">Seed of the order of the patches.</param>
public sealed record ChartSheetForm(SizeMm Sheet, double MarginMm, SizeMm Patch, double GapMm, ReadingWay Way, int Seed)
{
    /// <summary>Whether the part of the design that a patch belongs to stands in words under it; wants a gap of at least 5 mm.</summary>
    public bool Named { get; init; }

    /// <summary>12 mm patches 2 mm apart for reading by hand, 8 × 10 mm patches 1 mm apart for strips; 15 mm border.</summary>
    public static ChartSheetForm For(SizeMm sheet, ReadingWay way, int seed) => way == ReadingWay.Hand
        ? new(sheet, 15, new(12, 12), 2, way, seed)
        : new(sheet, 15, new(8, 10), 1, way, seed);
}
