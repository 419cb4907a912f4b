using Laydown.Layout.Sheets;

namespace Laydown.Layout.Rolls;

/// <summary>The roll pieces are laid out on.</summary>
/// <param name="WidthMm">Width of the roll, mm.</param>
/// <param name="LengthMm">Length left on the roll, mm.</param>
/// <param name="EdgeMarginMm">Unprintable margin on each side of the roll, mm; 0 or more.</param>
/// <param name="GapMm">Least distance between two printed rectangles, mm; 0 or more.</param>
/// <param name="LeadInMm">Bare length before the first piece, mm.</param>
/// <param name="LeadOutMm">Bare length after the last piece, mm.</param>
/// <param name="Process">Edge to edge: the roll is first cut across into sections. Free: anywhere.</param>
/// <param name="Seed">Seed of the search; the same seed gives the same layout.</param>
/// <param name="Iterations">How many orders are tried after the plain ones, fewer for over 400 copies; 0 for none.</param>
/// <param name="LeastSectionMm">Least length between two cuts across, mm; 0 for none.</param>
/// <param name="LongestSectionMm">Greatest length between two cuts across, mm; 0 for none.</param>
public sealed record RollRules(
    double WidthMm,
    double LengthMm,
    double EdgeMarginMm,
    double GapMm,
    double LeadInMm,
    double LeadOutMm,
    CutProcess Process,
    int Seed = 1,
    int Iterations = 200,
    double LeastSectionMm = 0,
    double LongestSectionMm = 0);
