namespace Laydown.Layout.Guillotine;

/// <summary>How good a layout of all pieces is: cost less what its offcuts are worth, then different layouts, then groups apart, then large offcuts; less is better.</summary>
/// <param name="Cost">What its sheets cost, less the worth of the largest offcut of each.</param>
/// <param name="Layouts">Different layouts.</param>
/// <param name="Apart">Over all groups: sheets that carry pieces of it, less one.</param>
/// <param name="Rests">Squared areas of all offcuts, negative: one large counts more than two small.</param>
internal readonly record struct CutRank(double Cost, int Layouts, int Apart, double Rests) : IComparable<CutRank>
{
    /// <summary>Sums of prices are not exact: costs that differ by less of themselves are one.</summary>
    private const double SameShare = 1e-9;

    public int CompareTo(CutRank other)
    {
        if (Math.Abs(Cost - other.Cost) > SameShare * Math.Max(Math.Abs(Cost), Math.Abs(other.Cost)))
            return Cost.CompareTo(other.Cost);

        return (Layouts, Apart, Rests).CompareTo((other.Layouts, other.Apart, other.Rests));
    }

    internal static CutRank Of(CutForest forest, CutJob job)
    {
        (double kept, double rests) = (0, 0);
        HashSet<ulong> pictures = [];
        foreach (int slot in forest.Open)
        {
            (ulong picture, long largest) = (1, 0);
            for (int root = forest.SheetAt(slot).Root; root >= 0; root = forest[root].Next)
                picture = Mix(picture, Picture(forest, job, root, ref largest, ref rests));
            int stock = forest.SheetAt(slot).Stock;
            pictures.Add(Mix(picture, (ulong)stock));
            kept += job.Problem.Rules.OffcutWorth * job.Costs[stock] * largest / job.Problem.Stocks[stock].Area;
        }

        return new(forest.Cost - kept, pictures.Count, forest.Apart, -rests);
    }

    /// <summary>Whether a node is a rest worth keeping.</summary>
    internal static bool IsOffcut(in CutNode n, CutJob job) =>
        n.Kind == CutKind.Bare && job.Problem.Rules.OffcutLeastSide is > 0 and var least && n.W >= least && n.H >= least && n.Stage <= job.MostStages;

    // A number that is the same for trees of the same cuts, whatever the order of the children of a part.
    private static ulong Picture(CutForest forest, CutJob job, int node, ref long largest, ref double rests)
    {
        ref readonly CutNode n = ref forest[node];
        if (IsOffcut(n, job))
        {
            largest = Math.Max(largest, n.Area);
            rests += (double)n.Area * n.Area;
        }

        ulong own = Mix(Mix((ulong)n.W, (ulong)n.H), n.Kind == CutKind.Piece ? (ulong)n.Type + 3 : n.Kind == CutKind.Part && n.Upright ? 2UL : 1UL);
        ulong children = 0;
        for (int child = n.First; child >= 0; child = forest[child].Next)
            children = unchecked(children + Picture(forest, job, child, ref largest, ref rests));
        return Mix(own, children);
    }

    // The end of SplitMix64 [Steele2014].
    private static ulong Mix(ulong one, ulong two)
    {
        unchecked
        {
            ulong z = (one * 0x9E3779B97F4A7C15UL) + two;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }
}
