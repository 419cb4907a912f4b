using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Boards;

/// <summary>What pieces are laid out on and how they are cut apart.</summary>
/// <param name="Sheet">Size of a board, mm; not looked at where <paramref name="Stocks"/> are given.</param>
/// <param name="EdgeMarginMm">Unprintable margin on each side, mm; 0 or more. Where stocks are given each has its own.</param>
/// <param name="GapMm">Least distance between two printed rectangles: kerf, or tool and bridge, mm; 0 or more.</param>
/// <param name="Process">Free or edge to edge.</param>
/// <param name="Seed">Seed of the search; the same seed gives the same layout.</param>
/// <param name="Iterations">How much is tried after the plain orders, fewer for over 400 copies; 0 for none.</param>
/// <param name="OffcutLeastSideMm">Shorter side a rest must have to be kept as an offcut, mm (common practice, no source).</param>
/// <param name="Stocks">Sizes and offcuts to take from, each with its price; null for boards of one size, as many as wanted.</param>
/// <param name="OffcutWorth">Share of its price by area that a kept offcut is worth, 0 to 1 (common practice, no source).</param>
/// <param name="MostStages">Most stages of edge-to-edge cuts, trimming to size not counted; 0 for any number.</param>
/// <param name="FirstCutUpright">Whether the first stage cuts upright; counts only where stages are limited.</param>
public sealed record BoardRules(
    SizeMm Sheet,
    double EdgeMarginMm,
    double GapMm,
    CutProcess Process,
    int Seed = 1,
    int Iterations = 200,
    double OffcutLeastSideMm = 150,
    IReadOnlyList<BoardStock>? Stocks = null,
    double OffcutWorth = 0.5,
    int MostStages = 0,
    bool FirstCutUpright = false)
{
    /// <summary>Whether all boards carry one and the same layout, cut as often as the piece wanted most asks for; of others more are made then.</summary>
    public bool OneLayout { get; init; }
}
