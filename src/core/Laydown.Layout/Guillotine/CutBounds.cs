using Laydown.Layout.Rectangles;

namespace Laydown.Layout.Guillotine;

/// <summary>Lower bounds of what a layout of all pieces costs.</summary>
internal static class CutBounds
{
    /// <summary>Largest table of areas that is filled.</summary>
    private const long MostCells = 2_000_000;

    internal static long LeastCost(CutJob job)
    {
        IReadOnlyList<RectStock> stocks = job.Problem.Stocks;
        Int128 pieces = 0;
        foreach (CutType t in job.Types)
            pieces += (Int128)t.Area * t.Copies;
        if (stocks.Count == 1)
            return (long)Math.Max((long)((pieces + stocks[0].Area - 1) / stocks[0].Area), Alone(job.Types, stocks[0])) * job.Costs[0];

        long unit = stocks.Aggregate(0L, (u, s) => (long)System.Numerics.BigInteger.GreatestCommonDivisor(u, s.Area));
        Int128 cells = (pieces + unit - 1) / unit;
        return cells <= MostCells ? ByTable(job, (int)cells, unit) : ByShare(job, pieces);
    }

    // The least cost of boards whose areas together are at least that of the pieces: a knapsack over multiples of the areas' common unit.
    private static long ByTable(CutJob job, int cells, long unit)
    {
        long[] least = new long[cells + 1];
        least.AsSpan(1).Fill(long.MaxValue / 2);
        for (int s = 0; s < job.Costs.Count; s++)
        {
            RectStock stock = job.Problem.Stocks[s];
            int area = (int)Math.Min(stock.Area / unit, cells);
            int most = Math.Min(stock.Copies ?? int.MaxValue, (cells + area - 1) / area);

            // As many as wanted: upwards, so that a board may come again; a limited number: downwards, one board after the other.
            if (most * (long)area >= cells)
                for (int a = 1; a <= cells; a++)
                    least[a] = Math.Min(least[a], least[Math.Max(0, a - area)] + job.Costs[s]);
            else
                for (int n = 0; n < most; n++)
                    for (int a = cells; a >= 1; a--)
                        least[a] = Math.Min(least[a], least[Math.Max(0, a - area)] + job.Costs[s]);
        }

        return least[cells] >= long.MaxValue / 2 ? 0 : least[cells];
    }

    // The cheapest area first, as far as it goes.
    private static long ByShare(CutJob job, Int128 pieces)
    {
        IReadOnlyList<RectStock> stocks = job.Problem.Stocks;
        double cost = 0;
        foreach (int s in Enumerable.Range(0, stocks.Count).OrderBy(s => (double)job.Costs[s] / stocks[s].Area))
        {
            Int128 here = stocks[s].Copies is int n ? Int128.Min(pieces, (Int128)n * stocks[s].Area) : pieces;
            cost += (double)here * job.Costs[s] / stocks[s].Area;
            pieces -= here;
        }

        // What floating point may have rounded up is given away.
        return (long)Math.Ceiling((cost * (1 - 1e-12)) - 1e-6);
    }

    // Pieces over half the board both ways, of which no two share a board.
    private static long Alone(IReadOnlyList<CutType> types, RectStock stock)
    {
        long alone = 0;
        foreach (CutType t in types)
        {
            bool upright = 2L * t.W > stock.Width && 2L * t.H > stock.Height;
            bool turned = 2L * t.H > stock.Width && 2L * t.W > stock.Height;
            if ((upright || t.H > stock.Height || t.W > stock.Width) && (!t.MayTurn || turned || t.H > stock.Width || t.W > stock.Height))
                alone += t.Copies;
        }

        return alone;
    }
}
