using Laydown.Layout.Rectangles;

namespace Laydown.Layout.Guillotine;

/// <summary>A problem made ready for the search: pieces of one size are one type, keep-outs are cut out of their stock.</summary>
internal sealed class CutJob
{
    /// <summary>Costs that are no whole numbers are counted in such parts.</summary>
    private const double FineCost = 10_000;

    internal CutJob(RectProblem problem, int seed)
    {
        Problem = problem;
        Types = [.. problem.Pieces.Select((p, i) => (p, i))
            .GroupBy(x => (x.p.Width, x.p.Height, MayTurn: x.p.MayTurn && x.p.Width != x.p.Height, x.p.Group))
            .Select(g => new CutType(
                g.Key.Width, g.Key.Height, g.Key.MayTurn, g.Sum(x => x.p.Copies), g.Key.Group, [.. g.Select(x => (x.i, x.p.Copies))]))];
        Parts = [.. problem.Stocks.Select(s => SheetParts.Of(s, problem.Rules, seed))];
        double scale = problem.Stocks.All(s => s.Cost == Math.Floor(s.Cost)) ? 1 : FineCost;
        Costs = [.. problem.Stocks.Select(s => (long)Math.Round(s.Cost * scale))];
        LeastW = Types.Count == 0 ? 1 : Types.Min(t => t.MayTurn ? Math.Min(t.W, t.H) : t.W);
        LeastH = Types.Count == 0 ? 1 : Types.Min(t => t.MayTurn ? Math.Min(t.W, t.H) : t.H);
        LeastCost = CutBounds.LeastCost(this);
        MostStages = problem.Rules.MostStages > 0 ? problem.Rules.MostStages : short.MaxValue;
    }

    internal RectProblem Problem { get; }

    internal IReadOnlyList<CutType> Types { get; }

    /// <summary>For each stock, several ways to cut its keep-outs out.</summary>
    internal IReadOnlyList<IReadOnlyList<IReadOnlyList<SheetPart>>> Parts { get; }

    /// <summary>What a sheet of each stock costs, in whole units.</summary>
    internal IReadOnlyList<long> Costs { get; }

    /// <summary>Narrowest any piece can lie.</summary>
    internal int LeastW { get; }

    /// <summary>Lowest any piece can lie.</summary>
    internal int LeastH { get; }

    /// <summary>No layout of all pieces costs less.</summary>
    internal long LeastCost { get; }

    internal int MostStages { get; }
}
