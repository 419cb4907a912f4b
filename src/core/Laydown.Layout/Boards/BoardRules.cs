using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Boards;

/// <summary>What pieces are laid out on and how they are cut apart.</summary>
/// <param name="Sheet">Size of a board, mm.</param>
/// <param name="EdgeMarginMm">Unprintable margin on each side, mm; 0 or more.</param>
/// <param name="GapMm">Least distance between two printed rectangles: kerf, or tool and bridge, mm; 0 or more.</param>
/// <param name="Process">Free or edge to edge.</param>
/// <param name="Seed">Seed of the search; the same seed gives the same layout.</param>
/// <param name="Iterations">How many orders are tried after the plain ones, fewer for over 400 copies; 0 for none.</param>
/// <param name="OffcutLeastSideMm">Shorter side a rest must have to be kept as an offcut, mm (common practice, no source).</param>
public sealed record BoardRules(
    SizeMm Sheet,
    double EdgeMarginMm,
    double GapMm,
    CutProcess Process,
    int Seed = 1,
    int Iterations = 200,
    double OffcutLeastSideMm = 150);
