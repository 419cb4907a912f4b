using Laydown.Layout.Packing;
using Laydown.Layout.Rectangles;
using Laydown.Measures;

namespace Laydown.Layout.FreePacking;

/// <summary>The problem as plain arrays, by index of piece and of stock.</summary>
internal sealed class FreeModel
{
    /// <summary>A kilometre in micrometres: sums of two sides and squares of a side stay exact.</summary>
    private const int MostSide = 1_000_000_000;

    private readonly Bare[][] bare;

    /// <exception cref="ArgumentOutOfRangeException">A size, a count of copies or a cost is out of range, or there is no piece.</exception>
    internal FreeModel(RectProblem problem)
    {
        Check(problem);
        Problem = problem;
        IReadOnlyList<RectPiece> pieces = problem.Pieces;
        IReadOnlyList<RectStock> stocks = problem.Stocks;
        W = [.. pieces.Select(p => p.Width)];
        H = [.. pieces.Select(p => p.Height)];
        Area = [.. pieces.Select(p => p.Area)];
        Turns = [.. pieces.Select(p => p.MayTurn && p.Width != p.Height)];
        StockW = [.. stocks.Select(s => s.Width)];
        StockH = [.. stocks.Select(s => s.Height)];
        StockCopies = [.. stocks.Select(s => s.Copies ?? int.MaxValue)];
        Cost = [.. stocks.Select(s => s.Cost)];
        Cheapest = [.. Enumerable.Range(0, stocks.Count).OrderBy(s => Cost[s])];

        // No piece needs a bare rectangle narrower or lower than the least of them.
        LeastW = pieces.Min(p => p.MayTurn ? Math.Min(p.Width, p.Height) : p.Width);
        LeastH = pieces.Min(p => p.MayTurn ? Math.Min(p.Width, p.Height) : p.Height);
        bare = new Bare[stocks.Count][];
        for (int s = 0; s < stocks.Count; s++)
            bare[s] = BareOf(stocks[s]);
        BareArea = [.. stocks.Select(AreaOf)];
        HasGroups = pieces.Any(p => p.Group >= 0);
        Wanted = [.. pieces.Select((p, i) => Enumerable.Range(0, stocks.Count).Any(s => StockCopies[s] > 0 && Fits(i, s)) ? p.Copies : 0)];
        Hopeless = [.. pieces.Select((p, i) => p.Copies - Wanted[i])];
    }

    internal RectProblem Problem { get; }

    internal int Types => W.Length;

    internal int Stocks => StockW.Length;

    internal int[] W { get; }

    internal int[] H { get; }

    internal long[] Area { get; }

    internal bool[] Turns { get; }

    /// <summary>Copies by piece; 0 for one that fits no stock.</summary>
    internal int[] Wanted { get; }

    /// <summary>Copies by piece of those that fit no stock.</summary>
    internal int[] Hopeless { get; }

    /// <summary>Whether any pieces want to share sheets.</summary>
    internal bool HasGroups { get; }

    /// <summary>Whether a layout that meets the bound of cost cannot be bettered: no groups, no rests to keep.</summary>
    internal bool OnlyCost => !HasGroups && Problem.Rules.OffcutLeastSide == 0;

    internal int[] StockW { get; }

    internal int[] StockH { get; }

    internal int[] StockCopies { get; }

    internal double[] Cost { get; }

    /// <summary>Stocks, the cheapest first.</summary>
    internal int[] Cheapest { get; }

    /// <summary>Area of each stock less its keep-outs.</summary>
    internal long[] BareArea { get; }

    internal int LeastW { get; }

    internal int LeastH { get; }

    /// <summary>A cost that counts as less: sums of prices are not exact.</summary>
    internal static double Under(double cost) => cost - (1e-9 * Math.Abs(cost));

    /// <summary>Cost of so many sheets of each stock, always added in the same order.</summary>
    internal double CostOf(ReadOnlySpan<int> usedOf)
    {
        double cost = 0;
        for (int s = 0; s < usedOf.Length; s++)
            cost += usedOf[s] * Cost[s];
        return cost;
    }

    /// <summary>What is bare on an unused sheet.</summary>
    internal ReadOnlySpan<Bare> BareOf(int stock) => bare[stock];

    /// <summary>Whether a piece fits on an unused sheet.</summary>
    internal bool Fits(int type, int stock)
    {
        foreach (Bare b in bare[stock])
            if ((W[type] <= b.W && H[type] <= b.H) || (Turns[type] && H[type] <= b.W && W[type] <= b.H))
                return true;

        return false;
    }

    private Bare[] BareOf(RectStock stock)
    {
        FreeBoard board = new();
        board.Bare(new(0, 0, stock.Width, stock.Height));
        foreach (Box box in stock.KeepOuts)
            board.Cut(new(box.X, box.Y, box.Right, box.Top), LeastW, LeastH);

        return board.Rests.ToArray();
    }

    private static void Check(RectProblem problem)
    {
        Bounds.Within(problem.Pieces.Count, 1, 1_000_000, "pieces");
        Bounds.Within(problem.Stocks.Count, 1, 10_000, "stocks");
        foreach (RectPiece p in problem.Pieces)
        {
            Bounds.Within(p.Width, 1, MostSide, "width of a piece");
            Bounds.Within(p.Height, 1, MostSide, "height of a piece");
            Bounds.Within(p.Copies, 1, 10_000_000, "copies of a piece");
        }

        foreach (RectStock s in problem.Stocks)
        {
            Bounds.Within(s.Width, 1, MostSide, "width of a stock");
            Bounds.Within(s.Height, 1, MostSide, "height of a stock");
            Bounds.Within(s.Copies ?? 0, 0, int.MaxValue, "copies of a stock");
            Bounds.Within(s.Cost, 0, 1e12, "cost of a stock");
        }
    }

    // Cells between all sides of keep-outs: few, so counting them one by one is quick enough.
    private static long AreaOf(RectStock stock)
    {
        int[] xs = [.. stock.KeepOuts.SelectMany(k => new[] { k.X, k.Right }).Append(0).Append(stock.Width).Select(x => Math.Clamp(x, 0, stock.Width)).Distinct().Order()];
        int[] ys = [.. stock.KeepOuts.SelectMany(k => new[] { k.Y, k.Top }).Append(0).Append(stock.Height).Select(y => Math.Clamp(y, 0, stock.Height)).Distinct().Order()];
        long area = 0;
        for (int i = 0; i + 1 < xs.Length; i++)
            for (int j = 0; j + 1 < ys.Length; j++)
            {
                Box cell = new(xs[i], ys[j], xs[i + 1] - xs[i], ys[j + 1] - ys[j]);
                if (!stock.KeepOuts.Any(k => k.Overlaps(cell)))
                    area += cell.Area;
            }

        return area;
    }
}
