using Laydown.Measures;
using Laydown.Press.Stacks;

namespace Laydown.Plan.Runs;

/// <summary>What a print mode must be able to bear.</summary>
/// <param name="ViewingDistanceM">Nearest distance the pieces are looked at from, m, over 0.</param>
/// <param name="SmallestTextPt">Smallest text, points; null for none.</param>
/// <param name="SmallestModuleMm">Narrowest module of a bar code, mm; null for none.</param>
/// <param name="Stack">The layers.</param>
/// <param name="Sheet">What is printed of one sheet: width across the belt and length along the feed, mm, both over 0.</param>
public sealed record ModeDemand(double ViewingDistanceM, double? SmallestTextPt, double? SmallestModuleMm, LayerStack Stack, SizeMm Sheet)
{
    /// <summary>The stock, to tell how warm it becomes; null where it is not known yet, then heat does not count.</summary>
    public Laydown.Press.Stocks.Stock? Stock { get; init; }

    /// <summary>Further stocks printed beside it, under the same lamps.</summary>
    public IReadOnlyList<Laydown.Press.Stocks.Stock> Beside { get; init; } = [];

    /// <summary>Most ink on one spot, all layers together, full laydowns.</summary>
    public double MaxInk { get; init; }

    /// <summary>Sheets of the run.</summary>
    public int Sheets { get; init; } = 1;

    /// <summary>Minutes the press is worked until the run is due; null where nobody knows, then the date does not count.</summary>
    public double? MinutesLeft { get; init; }

    /// <summary>Layers of each printed face; faces are printed one after the other, layers of a face in one go.</summary>
    public IReadOnlyList<int> LayersByFace => [.. Stack.Layers.GroupBy(l => l.Face).OrderBy(g => g.Key).Select(g => g.Count())];
}
