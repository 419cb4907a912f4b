using Laydown.Layout.Packing;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;

namespace Laydown.Layout.Hands;

/// <summary>Looks for the best way of finishing: plain orders by all rules, then a walk over orders.</summary>
internal sealed class FinishSearch(FinishTable table, SearchRules search)
{
    /// <summary>Steps without gain after which the walk starts anew from a fresh order.</summary>
    private const int Patience = 60;

    private static readonly Fit[] Fits = [Fit.ShortRest, Fit.LongRest, Fit.Area, Fit.Low];
    private static readonly Split[] Splits = [Split.ShortRest, Split.LongRest, Split.LargeRest, Split.Across, Split.Upright];

    private readonly IReadOnlyList<(Fit Fit, Split Split)> ways =
        [.. Fits.SelectMany(f => (table.Rules.Process == CutProcess.Guillotine ? Splits : [Split.Across]).Select(s => (f, s)))];

    private readonly long least = table.LeastSheets();
    private FinishFill? best;
    private FinishScore bestScore = FinishScore.None;
    private long left = search.Iterations;
    private Action<IReadOnlyList<HandSheet>>? told;

    internal IReadOnlyList<HandSheet> Best(Action<IReadOnlyList<HandSheet>>? better, CancellationToken stop)
    {
        told = better;
        (IReadOnlyList<Entry> order, int way) = Plain(stop);
        if (!IsProven && table.Types.Sum(t => (long)t.Piece.Quantity) > 1)
            Walk(Orders.InSteps(order), way, stop);
        return Written(best!);
    }

    // Everything has its place, and no layout begins fewer sheets.
    private bool IsProven => !table.Rules.IsRoll && bestScore.Left == 0 && bestScore.Sheets <= least;

    private (IReadOnlyList<Entry> Order, int Way) Plain(CancellationToken stop)
    {
        (IReadOnlyList<Entry>, int) start = ([], 0);
        foreach (IReadOnlyList<Entry> order in Orders.Plain(table.Types))
            for (int way = 0; way < ways.Count; way++)
            {
                // The very first packing is always made, so that there is an answer.
                if (best is not null && (stop.IsCancellationRequested || left-- <= 0))
                    return start;
                FinishScore before = bestScore;
                Judge(order, way);
                if (bestScore.IsBetterThan(before))
                    start = (order, way);
            }

        return start;
    }

    private void Walk(List<Entry> start, int startWay, CancellationToken stop)
    {
        Chance chance = new(search.Seed);
        List<Entry> here = start;
        (int way, double slope, int idle) = (startWay, bestScore.Slope, 0);
        while (!stop.IsCancellationRequested && left-- > 0 && !IsProven)
        {
            bool fresh = idle >= Patience;
            List<Entry> next = fresh ? Orders.Fresh(table.Types, chance) : Orders.Shaken(here, chance);
            int nextWay = fresh || chance.Below(6) == 0 ? chance.Below(ways.Count) : way;
            double nextSlope = Judge(next, nextWay).Slope;
            idle = fresh || nextSlope < slope ? 0 : idle + 1;
            if (fresh || nextSlope <= slope)
                (here, way, slope) = (next, nextWay, nextSlope);
        }
    }

    private FinishScore Judge(IReadOnlyList<Entry> order, int way)
    {
        FinishFill fill = FinishFill.Of(table, order, ways[way].Fit, ways[way].Split, CancellationToken.None);
        FinishScore score = FinishScore.Of(fill, table);
        if (score.IsBetterThan(bestScore))
        {
            (best, bestScore) = (fill, score);
            told?.Invoke(Written(fill));
        }

        return score;
    }

    private IReadOnlyList<HandSheet> Written(FinishFill fill)
    {
        IEnumerable<HandSheet> filled = table.Frames.Select((f, i) => f.Kept with { Spots = [.. f.Kept.Spots, .. fill.OnFrames[i].Select(Laid)] });
        return [.. filled, .. fill.Bare.OrderByDescending(s => s.UsedArea).Select(s => new HandSheet(s.Repeats, [.. s.Spots.OrderBy(p => p.Place.Y).ThenBy(p => p.Place.X).Select(Laid)]))];
    }

    private HandSpot Laid(Spot spot)
    {
        (double x, double y) = table.Grown.Corner(spot.Place);
        return new(table.Types[spot.Type].Piece.Id, x, y, spot.Turned ? 90 : 0);
    }
}
