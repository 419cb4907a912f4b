using Laydown.Layout.Rectangles;
using Laydown.Layout.Search;

namespace Laydown.Layout.Patterns;

/// <summary>Many copies of few sizes: patterns of two or three stages of edge-to-edge cuts and how often each is cut, at the least cost of sheets.</summary>
/// <remarks>
/// Column generation [GilmoreGomory1965] gives a bound and patterns; whole numbers by diving [Furini2012], then by taking some sheets of the best
/// answer apart again and again. Patterns do for free cutting too. Groups are not minded; sheets with keep-outs are not used.
/// Whole answers at equal cost: fewer different layouts first.
/// </remarks>
internal static class CutStock
{
    private const int TriesBetweenExchanges = 4;

    /// <summary>The cheapest layout found.</summary>
    /// <param name="problem">Pieces, stocks, rules: two stages where <see cref="RectRules.MostStages"/> is 2, else three.</param>
    /// <param name="rules">Seed, tries of each worker, workers.</param>
    /// <param name="better">Told of every better layout, one call at a time; null for none.</param>
    /// <param name="stop">Ends the search at the next border of a try; the best so far is given.</param>
    internal static RectLayout Solve(RectProblem problem, SearchRules rules, Action<RectLayout>? better, CancellationToken stop) =>
        new CutRun(problem, rules, better).Solve(stop).Layout;

    /// <summary>The same, with the bound that the search proved: no layout of this kind costs less.</summary>
    internal static (RectLayout Layout, double Bound) SolveWithBound(RectProblem problem, SearchRules rules, Action<RectLayout>? better, CancellationToken stop) =>
        new CutRun(problem, rules, better).Solve(stop);

    private sealed class CutRun(RectProblem problem, SearchRules rules, Action<RectLayout>? better)
    {
        private readonly CostSteps steps = new(problem.Stocks.Select(s => s.Cost));
        // Where the search stands; at equal cost it moves on, while the answer stays the one of fewest layouts.
        private List<CutUse> here = [];
        private CutScore score;
        private List<CutUse> answer = [];
        private CutScore answerScore;
        private double bound;

        internal (RectLayout Layout, double Bound) Solve(CancellationToken stop)
        {
            CutShop shop = new(problem);
            int[] wanted = [.. problem.Pieces.Select((p, i) => shop.Fits(i) ? p.Copies : 0)];
            CutWorker[] workers =
            [
                .. Enumerable.Range(0, Math.Max(1, rules.Workers)).Select(w => new CutWorker(problem, w == 0 ? shop : new(problem), wanted, rules.Seed + (7919 * w))),
            ];
            here = answer = workers[0].First();
            score = answerScore = workers[0].Score(here);
            better?.Invoke(Layout());
            if (rules.Iterations > 0 && wanted.Any(n => n > 0))
                Improve(workers, stop);
            return (Layout(), bound);
        }

        private void Improve(CutWorker[] workers, CancellationToken stop)
        {
            CutMix root = workers[0].Root(here.Select(u => u.Pattern), stop);
            bound = steps.Up(root.Bound);
            foreach (CutWorker worker in workers[1..])
                worker.Learn(root);
            for (long done = 0; done < rules.Iterations && !stop.IsCancellationRequested && !Proven;)
            {
                int tries = (int)Math.Min(TriesBetweenExchanges, rules.Iterations - done);
                (List<CutUse> Uses, CutScore Score)[] found = new (List<CutUse>, CutScore)[workers.Length];
                (List<CutUse> start, CutScore startScore) = (here, score);
                Parallel.For(
                    0, workers.Length, new() { MaxDegreeOfParallelism = workers.Length }, w => found[w] = Tries(workers[w], start, startScore, root, tries, stop));
                foreach ((List<CutUse> uses, CutScore itsScore) in found)
                    Take(uses, itsScore);
                done += tries;
            }
        }

        private bool Proven => score.MissingArea == 0 && score.Cost <= bound * (1 + 1e-9);

        private static (List<CutUse> Uses, CutScore Score) Tries(CutWorker worker, List<CutUse> uses, CutScore score, CutMix root, int tries, CancellationToken stop)
        {
            for (int i = 0; i < tries && !stop.IsCancellationRequested; i++)
                if (worker.Try(uses, score, root, stop) is List<CutUse> other && worker.Score(other) is CutScore its && its.IsNoWorseThan(score))
                    (uses, score) = (other, its);
            return (uses, score);
        }

        private void Take(List<CutUse> uses, CutScore itsScore)
        {
            if (!itsScore.IsNoWorseThan(score))
                return;
            (here, score) = (uses, itsScore);
            if (!itsScore.IsBetterThan(answerScore))
                return;
            (answer, answerScore) = (uses, itsScore);
            better?.Invoke(Layout());
        }

        private RectLayout Layout() => CutWriter.Layout(problem, answer);
    }
}
