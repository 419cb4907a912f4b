using Laydown.Layout.Rectangles;
using Laydown.Layout.Search;

namespace Laydown.Layout.FreePacking;

/// <summary>Lays rectangles out on sheets that are cut free: router, knife.</summary>
internal static class FreeSearch
{
    /// <summary>Tries of each worker between two exchanges: few at first, so that the first gains are told soon.</summary>
    private const long FirstRound = 50;

    /// <inheritdoc cref="FirstRound"/>
    private const long MostRound = 2000;

    /// <summary>Tries to fill a sheet that was made smaller.</summary>
    private const long PushTries = 100;

    /// <summary>With the bound of cost met, tries without a gain after which the last sheet is taken as empty as it gets.</summary>
    private const long MostIdle = 2000;

    /// <summary>All pieces placed, then least cost, then groups together, fewest different sheets, the largest rest on the last one.</summary>
    /// <param name="problem">The problem; its process is taken as free.</param>
    /// <param name="rules">How long; 0 iterations give the first answer.</param>
    /// <param name="better">Told every better layout, the first included; null where nobody listens.</param>
    /// <param name="stop">Ends the search; the best so far comes back.</param>
    internal static RectLayout Solve(RectProblem problem, SearchRules rules, Action<RectLayout>? better, CancellationToken stop)
    {
        return problem.Pieces.Count == 0 ? new([], []) : Pushed(problem, rules, Found(problem, rules, better, stop), better);
    }

    private static RectLayout Found(RectProblem problem, SearchRules rules, Action<RectLayout>? better, CancellationToken stop)
    {
        FreeModel model = new(problem);
        if (model.Wanted.All(w => w == 0))
            return new([], model.Hopeless);

        Action<FreeLayout>? told = better is null ? null : layout => better(FreeWriter.Write(model, layout));
        double bound = FreeBounds.Cost(model);
        FreeLayout best = FreePortfolio.Best(model, bound, told, stop);
        return FreeWriter.Write(model, Search(model, best, bound, rules, told, stop));
    }

    // The emptiest sheet last; what is bare on it then is looked for anew.
    private static RectLayout Pushed(RectProblem problem, SearchRules rules, RectLayout found, Action<RectLayout>? better)
    {
        if (rules.Iterations <= 0)
            return found;

        RectLayout pushed = EdgeRest.Pushed(problem, found, one => Found(
            one with { Rules = one.Rules with { OffcutLeastSide = 0, OffcutWorth = 0 } }, new(rules.Seed, PushTries), null, CancellationToken.None));
        if (ReferenceEquals(pushed, found))
            return found;

        RectLayout told = pushed with { Sheets = [.. pushed.Sheets.Select(s => s with { Offcuts = FreeOffcuts.Of(problem, s) })] };
        better?.Invoke(told);
        return told;
    }

    private static FreeLayout Search(
        FreeModel model, FreeLayout best, double bound, SearchRules rules, Action<FreeLayout>? told, CancellationToken stop)
    {
        if (rules.Iterations <= 0 || stop.IsCancellationRequested || (model.OnlyCost && best.IsWhole && best.Cost <= bound) || best.Sheets.Count == 0)
            return best;

        FreeStart start = new(model, best);
        FreeWorker[] workers = [.. Enumerable.Range(0, Math.Max(1, rules.Workers)).Select(i => new FreeWorker(model, start, best, rules.Seed + (1_000_003L * i)))];
        (long round, long left) = (FirstRound, rules.Iterations);
        while (left > 0 && !stop.IsCancellationRequested && !IsDone(model, best, bound, workers))
        {
            long tries = Math.Min(round, left);
            left -= tries;
            round = Math.Min(MostRound, round * 2);
            Run(workers, tries, bound, stop);
            FreeWorker ahead = workers[0];
            foreach (FreeWorker worker in workers)
                if (worker.Answer.IsBetterThan(ahead.Answer))
                    ahead = worker;
            foreach (FreeWorker worker in workers)
                worker.Follow(ahead);
            if (!ahead.Answer.IsBetterThan(best))
                continue;

            best = ahead.Answer;
            told?.Invoke(best);
        }

        return best;
    }

    private static void Run(FreeWorker[] workers, long tries, double bound, CancellationToken stop)
    {
        // The stop is looked at inside, so that what was found is kept.
        if (workers.Length == 1)
            workers[0].Run(tries, bound, stop);
        else
            Parallel.For(0, workers.Length, new ParallelOptions { CancellationToken = CancellationToken.None }, i => workers[i].Run(tries, bound, stop));
    }

    private static bool IsDone(FreeModel model, FreeLayout best, double bound, FreeWorker[] workers) =>
        best.IsWhole && best.Cost <= bound && (model.OnlyCost || best.Cost == 0 || workers.All(w => w.Idle >= MostIdle));
}
