using Laydown.Layout.Packing;
using Laydown.Layout.Sheets;

namespace Laydown.Layout.Boards;

/// <summary>Looks for the best filling: plain orders by all rules first, then a walk over orders.</summary>
internal sealed class BoardSearch(IReadOnlyList<PieceType> types, BoardArea area, BoardRules rules)
{
    /// <summary>Steps without gain after which the walk starts anew from a fresh order.</summary>
    private const int Patience = 60;

    /// <summary>How many partial fillings count as much work as one whole filling, about.</summary>
    private const int RepackSteps = 4;

    private static readonly Fit[] Fits = [Fit.ShortRest, Fit.LongRest, Fit.Area, Fit.Low];
    private static readonly Split[] Splits = [Split.ShortRest, Split.LongRest, Split.LargeRest, Split.Across, Split.Upright];

    private readonly Func<IFreeSpace>[] spaces = rules.Process is CutProcess.Guillotine
        ? [.. Fits.SelectMany(f => Splits.Select(s => (Func<IFreeSpace>)(() => new GuillotineNodes(area.Width, area.Height, f, s))))]
        : [.. Fits.Select(f => (Func<IFreeSpace>)(() => new MaximalRectangles(area.Width, area.Height, f)))];

    private readonly int offcutLeastSide = Micro.Up(rules.OffcutLeastSideMm + rules.GapMm);
    private readonly int least = area.LeastBoards(types);
    private readonly int iterations = Orders.Steps(rules.Iterations, types);
    private IReadOnlyList<FilledSheet> best = [];
    private BoardScore bestScore = new(int.MaxValue, int.MaxValue, 1, 1);

    internal IReadOnlyList<FilledSheet> Best(CancellationToken cancellation)
    {
        (IReadOnlyList<Entry> order, int space) = Plain(cancellation);
        if (bestScore.Boards > least && types.Sum(t => (long)t.Piece.Quantity) > 1)
        {
            // Half of the work goes over orders; the cheaper half packs a few boards of the best filling anew.
            Walk(Orders.InSteps(order), space, iterations / 2, cancellation);
            Repack(cancellation);
        }

        return best;
    }

    private (IReadOnlyList<Entry> Order, int Space) Plain(CancellationToken cancellation)
    {
        (IReadOnlyList<Entry>, int) start = ([], 0);
        foreach (IReadOnlyList<Entry> order in Orders.Plain(types))
            for (int space = 0; space < spaces.Length; space++)
            {
                BoardScore before = bestScore;
                Judge(order, space, offcutLeastSide, cancellation);
                if (bestScore.IsBetterThan(before))
                    start = (order, space);
            }

        return start;
    }

    private void Walk(List<Entry> start, int startSpace, int steps, CancellationToken cancellation)
    {
        Chance chance = new(rules.Seed);
        List<Entry> here = start;
        (int space, double slope, int idle) = (startSpace, bestScore.Slope, 0);
        for (int i = 0; i < steps && bestScore.Boards > least; i++)
        {
            bool fresh = idle >= Patience;
            List<Entry> next = fresh ? Orders.Fresh(types, chance) : Orders.Shaken(here, chance);
            int nextSpace = fresh || chance.Below(6) == 0 ? chance.Below(spaces.Length) : space;
            double nextSlope = Judge(next, nextSpace, null, cancellation).Slope;
            idle = fresh || nextSlope < slope ? 0 : idle + 1;
            if (fresh || nextSlope <= slope)
                (here, space, slope) = (next, nextSpace, nextSlope);
        }
    }

    private void Repack(CancellationToken cancellation)
    {
        Chance chance = new(rules.Seed + 1L);
        BoardRepack here = new(types, best, area);
        for (int i = 0; i < iterations * RepackSteps && bestScore.Boards > least; i++)
        {
            if (!here.Step(spaces[chance.Below(spaces.Length)], chance, cancellation))
                continue;

            BoardScore score = BoardScore.Of(here.Sheets, area);
            if (score.IsBetterThan(bestScore))
                (best, bestScore) = (here.Sheets, score);
        }
    }

    private BoardScore Judge(IReadOnlyList<Entry> order, int space, int? offcuts, CancellationToken cancellation)
    {
        IReadOnlyList<FilledSheet> sheets = SheetFill.All(types, order, spaces[space], cancellation);
        BoardScore score = BoardScore.Of(sheets, area);
        if (offcuts is int side && score.MayBeat(bestScore))
            score = score.WithOffcut(sheets, area, side);
        if (score.IsBetterThan(bestScore))
            (best, bestScore) = (sheets, score);

        return score;
    }
}
