using Laydown.Layout.Rectangles;
using Laydown.Layout.Search;

namespace Laydown.Layout.Guillotine;

/// <summary>Lays rectangles out on sheets of several sizes that are cut from edge to edge, at the least cost.</summary>
internal static class GuillotineSearch
{
    internal static long LastSteps;
    /// <summary>Steps between two exchanges of workers.</summary>
    private const int Round = 2000;

    /// <summary>The cheapest layout found; pieces that no sheet is left for are missing in it.</summary>
    /// <param name="problem">What to lay out.</param>
    /// <param name="rules">Seed, iterations, workers.</param>
    /// <param name="better">Told of every better layout, one call at a time.</param>
    /// <param name="stop">Ends the search at the next border of an iteration; the best layout so far is given.</param>
    internal static RectLayout Solve(RectProblem problem, SearchRules rules, Action<RectLayout>? better, CancellationToken stop)
    {
        CutJob job = new(problem, rules.Seed);
        int workers = Math.Max(1, rules.Workers);
        CutWalk[] walks = [.. Enumerable.Range(0, workers).Select(w => new CutWalk(job, rules.Seed + (w * 7919L), MemoryOf(w)))];
        walks[0].Start();
        CutForest best = new(job);
        best.CopyFrom(walks[0].Best);
        better?.Invoke(CutWriter.Write(best, job));
        if (best.MissingCount == 0 && best.Cost <= job.LeastCost)
            return CutWriter.Write(best, job);
        for (int w = 1; w < workers; w++)
            walks[w].Start();
        long done = 0;
        while (done < rules.Iterations && !stop.IsCancellationRequested)
        {
            long steps = Math.Min(Round, rules.Iterations - done);
            long goal = best.MissingCount == 0 ? best.Cost - 1 : long.MaxValue;
            Run(walks, goal, steps, job.LeastCost, stop);
            done += steps; LastSteps = walks.Sum(w => w.Steps);
            foreach (CutWalk walk in walks)
                if (walk.Best.IsBetterThan(best))
                {
                    best.CopyFrom(walk.Best);
                    better?.Invoke(CutWriter.Write(best, job));
                }

            if (best.MissingCount == 0 && best.Cost <= job.LeastCost)
                break;
        }

        return CutWriter.Write(best, job);
    }

    private static int MemoryOf(int worker) => 100;

    private static void Run(CutWalk[] walks, long goal, long steps, long least, CancellationToken stop)
    {
        if (walks.Length == 1)
            Walk(walks[0], goal, steps, least, stop);
        else
            Parallel.For(0, walks.Length, new ParallelOptions { MaxDegreeOfParallelism = walks.Length }, w => Walk(walks[w], goal, steps, least, stop));
    }

    private static void Walk(CutWalk walk, long goal, long steps, long least, CancellationToken stop)
    {
        walk.Aim(goal);
        for (long i = 0; i < steps && !stop.IsCancellationRequested; i++)
            if (walk.Step())
            {
                if (walk.Best.Cost <= least)
                    return;
                walk.Aim(walk.Best.Cost - 1);
            }
    }
}
