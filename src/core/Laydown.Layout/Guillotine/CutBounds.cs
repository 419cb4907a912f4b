using Laydown.Layout.Rectangles;

namespace Laydown.Layout.Guillotine;

/// <summary>Lower bounds of what a layout of all pieces costs.</summary>
internal static class CutBounds
{
    internal static long LeastCost(CutJob job)
    {
        IReadOnlyList<RectStock> stocks = job.Problem.Stocks;
        Int128 pieces = 0;
        foreach (CutType t in job.Types)
            pieces += (Int128)t.Area * t.Copies;
        if (stocks.Count == 1)
            return (long)Math.Max(Boards(pieces, stocks[0].Area), Alone(job.Types, stocks[0])) * job.Costs[0];

        // The cheapest area first, as far as it goes.
        double cost = 0;
        foreach (int s in Enumerable.Range(0, stocks.Count).OrderBy(s => (double)job.Costs[s] / stocks[s].Area))
        {
            Int128 here = stocks[s].Copies is int n ? Int128.Min(pieces, (Int128)n * stocks[s].Area) : pieces;
            cost += (double)here * job.Costs[s] / stocks[s].Area;
            pieces -= here;
        }

        return (long)Math.Ceiling(cost - 1e-6);
    }

    private static long Boards(Int128 area, long board) => (long)((area + board - 1) / board);

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
