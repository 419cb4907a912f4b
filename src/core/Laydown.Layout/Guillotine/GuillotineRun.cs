using Laydown.Layout.Rectangles;
using Laydown.Layout.Search;

namespace Laydown.Layout.Guillotine;

/// <summary>One run of the search: workers walk in rounds and exchange the goal between them; then the offcuts of the best are made larger.</summary>
internal sealed class GuillotineRun
{
    /// <summary>Steps of each worker between two exchanges.</summary>
    private const int Round = 2000;

    /// <summary>Steps on offcuts after each round.</summary>
    private const int TidyRound = 200;

    private readonly CutJob job;
    private readonly SearchRules rules;
    private readonly Action<RectLayout>? better;
    private readonly CancellationToken stop;
    private readonly CutWalk[] walks;
    private readonly CutForest best, cheapest;
    private readonly CutTidy tidy;
    private long done;

    internal GuillotineRun(CutJob job, SearchRules rules, Action<RectLayout>? better, CancellationToken stop)
    {
        (this.job, this.rules, this.better, this.stop) = (job, rules, better, stop);
        walks = [.. Enumerable.Range(0, Math.Max(1, rules.Workers)).Select(w => new CutWalk(job, rules.Seed + (w * 7919L)))];
        (best, cheapest) = (new(job), new(job));
        tidy = new(job, rules.Seed + 104_729L);
    }

    private bool Proven => cheapest.MissingCount == 0 && cheapest.Cost <= job.LeastCost;

    internal RectLayout Best()
    {
        walks[0].Start();
        Take();
        Tidy();
        if (!Proven && rules.Iterations > 0)
            foreach (CutWalk walk in walks.Skip(1))
                walk.Start();
        while (done < rules.Iterations && !stop.IsCancellationRequested && (!Proven || tidy.MayGain))
        {
            if (!Proven)
                Walk();
            else
                done += TidyRound;
            Take();
            Tidy();
        }

        return CutWriter.Write(best, job);
    }

    private void Walk()
    {
        long steps = Math.Min(Round, rules.Iterations - done);
        done += steps;
        long goal = cheapest.MissingCount == 0 ? cheapest.Cost - 1 : long.MaxValue;
        if (walks.Length == 1)
            walks[0].Go(goal, steps, stop);
        else
            Parallel.For(0, walks.Length, new ParallelOptions { MaxDegreeOfParallelism = walks.Length }, w => walks[w].Go(goal, steps, stop));
    }

    // The cheapest of the walks; whether it is the best tells what else counts.
    private void Take()
    {
        bool gained = false;
        foreach (CutWalk walk in walks)
            if (walk.Best.IsBetterThan(cheapest))
            {
                cheapest.CopyFrom(walk.Best);
                gained = true;
            }

        if (!gained)
            return;

        if (cheapest.MissingCount > 0)
            Tell(cheapest);
        else if (tidy.Start(cheapest))
            Tell(tidy.Best);
    }

    private void Tidy()
    {
        if (cheapest.MissingCount == 0 && rules.Iterations > 0 && tidy.MayGain && tidy.Go(TidyRound, stop))
            Tell(tidy.Best);
    }

    private void Tell(CutForest found)
    {
        best.CopyFrom(found);
        better?.Invoke(CutWriter.Write(best, job));
    }
}
