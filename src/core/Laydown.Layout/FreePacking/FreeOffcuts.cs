using Laydown.Layout.Packing;
using Laydown.Layout.Rectangles;

namespace Laydown.Layout.FreePacking;

/// <summary>Rests of a filled sheet that are worth keeping.</summary>
internal static class FreeOffcuts
{
    /// <summary>The largest bare rectangle that reaches an edge of the sheet, then the next of what is left, until none is wide enough; none overlaps another.</summary>
    internal static IReadOnlyList<Box> Of(RectStock stock, ReadOnlySpan<Lying> spots, int leastSide)
    {
        List<Box> found = [];
        if (leastSide <= 0)
            return found;

        FreeBoard rest = new();
        rest.Bare(new(0, 0, stock.Width, stock.Height));
        foreach (Box box in stock.KeepOuts)
            rest.Cut(new(box.X, box.Y, box.Right, box.Top), leastSide, leastSide);
        foreach (Lying spot in spots)
            rest.Cut(spot.Place, leastSide, leastSide);
        while (Largest(stock, rest.Rests) is Bare b)
        {
            found.Add(new(b.X, b.Y, b.W, b.H));
            rest.Cut(b, leastSide, leastSide);
        }

        return found;
    }

    /// <summary>The same for a filled sheet of a problem.</summary>
    internal static IReadOnlyList<Box> Of(RectProblem problem, RectSheet sheet) => Of(
        problem.Stocks[sheet.Stock],
        [.. sheet.Spots.Select(s => new Lying(s.Piece, new(s.Place.X, s.Place.Y, s.Place.Right, s.Place.Top), s.Turned))],
        problem.Rules.OffcutLeastSide);

    /// <summary>What the rests are worth, of each sheet the largest alone: the share of the price of its area.</summary>
    internal static double Worth(FreeModel model, IReadOnlyList<FreeSheet> sheets)
    {
        RectRules rules = model.Problem.Rules;
        double worth = 0;
        foreach (FreeSheet sheet in sheets)
        {
            RectStock stock = model.Problem.Stocks[sheet.Board.Stock];
            long area = Of(stock, sheet.Board.Spots, rules.OffcutLeastSide).Select(b => b.Area).FirstOrDefault();
            worth += sheet.Repeats * rules.OffcutWorth * stock.Cost * area / stock.Area;
        }

        return worth;
    }

    private static Bare? Largest(RectStock stock, ReadOnlySpan<Bare> rests)
    {
        Bare? largest = null;
        foreach (Bare b in rests)
        {
            bool atEdge = b.X == 0 || b.Y == 0 || b.Right == stock.Width || b.Top == stock.Height;
            if (atEdge && (largest is null || b.Area > largest.Value.Area))
                largest = b;
        }

        return largest;
    }
}
