using Laydown.Layout.Packing;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Search;

namespace Laydown.Layout.Strips;

/// <summary>Looks for the lowest strip that takes all pieces.</summary>
internal static class StripSearch
{
    /// <summary>Highest strip reckoned with.</summary>
    internal const int Limit = 1_500_000_000;

    /// <summary>Placings of one worker between two exchanges, about.</summary>
    private const long RoundWork = 1_000_000;

    /// <summary>The lowest strip found; it lacks copies only where no strip under <see cref="Limit"/> takes them all.</summary>
    /// <param name="problem">Width and pieces.</param>
    /// <param name="rules">Chance, fillings of each worker, workers.</param>
    /// <param name="better">Called with every lower strip, one call at a time; may be null.</param>
    /// <param name="stop">Ends the search; the best so far is returned.</param>
    internal static StripAnswer Solve(StripProblem problem, SearchRules rules, Action<StripAnswer>? better, CancellationToken stop)
    {
        StripPieces pieces = new(problem.Pieces, problem.Widest);
        int least = StripBounds.Least(problem);
        StripRecord best = StripStart.Of(pieces, problem, Limit, stop);
        better?.Invoke(Answer(best, pieces, least));
        if (best.Ways.Length < pieces.Count || best.Height <= least || pieces.Count < 2)
            return Answer(best, pieces, least);

        StripWalk[] walks = [.. Enumerable.Range(0, Math.Max(1, rules.Workers)).Select(w => new StripWalk(pieces, problem, least, best, (rules.Seed * 1_000_003L) + w))];
        long round = Math.Max(1, RoundWork / pieces.Count);
        for (long done = 0; done < rules.Iterations && best.Height > least && !stop.IsCancellationRequested; done += round)
        {
            Round(walks, Math.Min(round, rules.Iterations - done), stop);
            StripRecord lowest = walks.MinBy(w => w.Best.Height)!.Best;
            if (lowest.Height >= best.Height)
                continue;

            best = lowest;
            better?.Invoke(Answer(best, pieces, least));
            foreach (StripWalk walk in walks)
                walk.Adopt(best);
        }

        return Answer(best, pieces, least);
    }

    private static void Round(StripWalk[] walks, long fillings, CancellationToken stop)
    {
        if (walks.Length == 1)
            walks[0].Run(fillings, stop);
        else
            Parallel.ForEach(walks, new ParallelOptions { MaxDegreeOfParallelism = walks.Length, CancellationToken = CancellationToken.None }, w => w.Run(fillings, stop));
    }

    private static StripAnswer Answer(StripRecord record, StripPieces pieces, int least)
    {
        List<RectSpot> spots = new(record.Ways.Length);
        for (int i = 0; i < record.Ways.Length; i++)
        {
            int way = record.Ways[i];
            Box place = new(record.Xs[i], record.Ys[i], pieces.Width[way], pieces.Height[way]);
            spots.Add(new(pieces.Piece[way / pieces.Ways], place, pieces.Ways == 2 && (way & 1) == 1));
        }

        return new(record.Height, spots, least);
    }
}
