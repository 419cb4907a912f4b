using Laydown.Layout.Rectangles;

namespace Laydown.Layout.Guillotine;

/// <summary>A problem made ready for the search: pieces of one size are one type, keep-outs are cut out of their stock.</summary>
internal sealed class CutJob
{
    /// <summary>Costs that are no whole numbers are counted in such parts.</summary>
    private const double FineCost = 10_000;

    private readonly IReadOnlyList<IReadOnlyList<IReadOnlyList<int>>> ways;

    internal CutJob(RectProblem problem, int seed)
    {
        Problem = problem;
        Parts = [.. problem.Stocks.Select(s => SheetParts.Of(s, problem.Rules, seed))];
        Types = [.. problem.Pieces.Select((p, i) => (p, i)).Where(x => x.p.Copies > 0 && FitsSome(x.p))
            .GroupBy(x => (x.p.Width, x.p.Height, MayTurn: x.p.MayTurn && x.p.Width != x.p.Height, x.p.Group))
            .Select(g => new CutType(
                g.Key.Width, g.Key.Height, g.Key.MayTurn, g.Sum(x => x.p.Copies), g.Key.Group, [.. g.Select(x => (x.i, x.p.Copies))]))];
        int[] groups = [.. Types.Select(t => t.Group).Where(g => g >= 0).Distinct().Order()];
        (Groups, GroupOf) = (groups.Length, [.. Types.Select(t => Math.Max(0, Array.IndexOf(groups, t.Group)))]);
        double scale = problem.Stocks.All(s => s.Cost == Math.Floor(s.Cost)) ? 1 : FineCost;
        Costs = [.. problem.Stocks.Select(s => (long)Math.Round(s.Cost * scale))];
        LeastW = Types.Count == 0 ? 1 : Types.Min(t => t.MayTurn ? Math.Min(t.W, t.H) : t.W);
        LeastH = Types.Count == 0 ? 1 : Types.Min(t => t.MayTurn ? Math.Min(t.W, t.H) : t.H);
        ways = [.. Types.Select(t => (IReadOnlyList<IReadOnlyList<int>>)[.. Parts.Select(p => (IReadOnlyList<int>)[.. Enumerable.Range(0, p.Count)
            .Where(w => p[w].Any(part => t.Fits(part.Place.W, part.Place.H)))])])];
        LeastCost = CutBounds.LeastCost(this);
        MostStages = problem.Rules.MostStages > 0 ? problem.Rules.MostStages : short.MaxValue;
    }

    internal RectProblem Problem { get; }

    /// <summary>How many groups of pieces want to share sheets.</summary>
    internal int Groups { get; }

    /// <summary>For each type the number of its group from 0; tells nothing for one without.</summary>
    internal IReadOnlyList<int> GroupOf { get; }

    /// <summary>What can lie on some sheet; the rest is missing in every layout.</summary>
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

    /// <summary>In which ways the keep-outs of a stock can be cut out so that a type fits a part.</summary>
    internal IReadOnlyList<int> WaysFor(int type, int stock) => ways[type][stock];

    private bool FitsSome(RectPiece piece) => Parts.Where((_, s) => Problem.Stocks[s].Copies is not 0).Any(ways => ways.Any(way => way.Any(part =>
        (piece.Width <= part.Place.W && piece.Height <= part.Place.H) || (piece.MayTurn && piece.Height <= part.Place.W && piece.Width <= part.Place.H))));
}
