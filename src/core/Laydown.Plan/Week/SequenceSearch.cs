using Laydown.Layout.Search;

namespace Laydown.Plan.Week;

/// <summary>Puts jobs on one press in the order with the least weighted lateness it can find; any-time.</summary>
/// <remarks>
/// Orders drawn by chance are brought down by shifts of blocks of up to 13 jobs and swaps, with kicks that swap two blocks [Subramanian2014]; the best of them
/// are crossed with each other, and every child is brought down in turn [Xu2014]; own working out. Several workers each have orders of their own and give their
/// best to the next one at fixed counts of moves: the same seed, number of workers and iterations give the same order on every machine.
/// The planner of the week has a walk of its own, as shifts, releases, the cost of set-ups and benches do not fit here; tests and the bench hold it against this.
/// </remarks>
public static class SequenceSearch
{
    private const long FirstRound = 200_000;
    private const long MostRound = 100_000_000;

    /// <summary>Searches.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="rules">How long; 0 iterations give the first answer.</param>
    /// <param name="better">Told every better answer between two rounds, the first included; null where nobody listens.</param>
    /// <param name="stop">Ends the search; the best so far comes back.</param>
    public static SequenceAnswer Solve(SequenceProblem problem, SearchRules rules, Action<SequenceAnswer>? better, CancellationToken stop)
    {
        SequenceAnswer best = First(problem);
        better?.Invoke(best);
        if (problem.Count < 2 || rules.Iterations <= 0 || best.Cost == 0)
            return best;

        SequenceWorker[] workers = [.. Enumerable.Range(0, Math.Max(1, rules.Workers)).Select(i => new SequenceWorker(problem, best, rules.Seed + (1_000_003L * i)))];
        long[] left = [.. workers.Select(_ => rules.Iterations)];
        for (long round = FirstRound; left.Any(l => l > 0) && best.Cost > 0 && !stop.IsCancellationRequested; round = Math.Min(MostRound, round * 2))
        {
            // The stop is looked at inside, so that what was found is kept.
            Parallel.For(0, workers.Length, new ParallelOptions { CancellationToken = CancellationToken.None }, i => left[i] -= workers[i].Run(left[i], round, stop));
            SequenceAnswer[] found = [.. workers.Select(w => w.Best)];
            for (int i = 0; i < workers.Length; i++)
                workers[i].Follow(found[(i + 1) % workers.Length]);
            SequenceAnswer ahead = found.MinBy(b => b.Cost)!;
            if (ahead.Cost >= best.Cost)
                continue;

            best = ahead;
            better?.Invoke(best);
        }

        return best;
    }

    /// <summary>The first answer: jobs by due time, each put where it costs least.</summary>
    private static SequenceAnswer First(SequenceProblem problem)
    {
        List<int> order = [];
        foreach (int job in Enumerable.Range(0, problem.Count).OrderBy(j => problem.Jobs[j].Due).ThenBy(j => j))
        {
            int place = 0;
            long least = long.MaxValue;
            for (int at = 0; at <= order.Count; at++)
            {
                order.Insert(at, job);
                long cost = problem.CostOf(order);
                order.RemoveAt(at);
                if (cost < least)
                    (least, place) = (cost, at);
            }

            order.Insert(place, job);
        }

        return new(order, problem.CostOf(order));
    }
}
