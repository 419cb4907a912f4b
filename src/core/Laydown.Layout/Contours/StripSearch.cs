using Laydown.Layout.Packing;
using Laydown.Layout.Search;

namespace Laydown.Layout.Contours;

/// <summary>Looks for the shortest strip: pushes the best layout together, moves the overlaps apart, and where that fails starts from layouts that came close.</summary>
/// <remarks>[Gardeyn2025]; here all workers race at the same length, exchange after fixed counts of sweeps, and the step of pushing adapts.</remarks>
internal sealed class StripSearch
{
    private const int SweepsOfRound = 8;
    private const float LeastStep = 0.001f, LargestStep = 0.02f, LeastSqueeze = 0.00004f;

    private readonly ContourJob job;
    private readonly SearchRules rules;
    private readonly Action<ContourResult>? better;
    private readonly CancellationToken stop;
    private readonly StripWorker[] workers;
    private readonly int[] items, large;
    private readonly List<(float Loss, Pose[] Poses)> pool = [];
    private readonly Pose[] best;
    private float length, step = LargestStep, squeeze;
    private StripAttempt phase = StripAttempt.Descend;

    internal StripSearch(ContourJob job, IReadOnlyList<int> items, SearchRules rules, Action<ContourResult>? better, CancellationToken stop)
    {
        (this.job, this.items, this.rules, this.better, this.stop) = (job, [.. items], rules, better, stop);
        ContourStrip strip = job.Problem.Strip!;
        float low = (float)(strip.EdgeMarginMm - job.HalfGap), high = (float)(strip.WidthMm - strip.EdgeMarginMm + job.HalfGap);
        Form[] forms = [.. items.Select(job.FormOf)];
        PairTables tables = new(job.Forms);
        Bay bay = new(low, low, low + forms.Sum(f => f.Reach) + 1, high);
        workers = [.. Enumerable.Range(0, rules.Workers).Select(w => new StripWorker(new Field(tables, forms, [], [], [bay]), new Chance((rules.Seed * 1000L) + w)))];
        best = new Pose[forms.Length];
        large = Large(forms);
        Low = low;
    }

    private float Low { get; }

    /// <summary>The shortest layout found.</summary>
    internal ContourResult Best()
    {
        First();
        better?.Invoke(Result());
        long rounds = rules.Iterations == long.MaxValue ? long.MaxValue : rules.Iterations / SweepsOfRound;
        for (long round = 0; round < rounds && !stop.IsCancellationRequested; round++)
        {
            foreach (StripWorker worker in workers)
            {
                if (worker.IsDone)
                    Next(worker);
            }

            if (workers.Length == 1)
                workers[0].Run(SweepsOfRound, stop);
            else
                Parallel.ForEach(workers, w => w.Run(SweepsOfRound, stop));
            Gather();
        }

        return Result();
    }

    private static int[] Large(Form[] forms)
    {
        int[] byHull = [.. Enumerable.Range(0, forms.Length).OrderByDescending(i => forms[i].HullRoot)];
        double all = forms.Sum(f => (double)f.HullRoot * f.HullRoot), sum = 0;
        return [.. byHull.TakeWhile(i => (sum += forms[i].HullRoot * forms[i].HullRoot) <= 0.75 * all || sum < all / 2)];
    }

    /// <summary>Puts the forms one by one as far to the left as a few tries find, large ones first.</summary>
    private void First()
    {
        Field field = workers[0].Field;
        int[] order = [.. Enumerable.Range(0, items.Length).OrderByDescending(i => field.Form(i).HullRoot * field.Form(i).Reach)];
        for (int i = 0; i < items.Length; i++)
            field.Lift(i);
        float all = field.Bays[0].Right;
        int tries = Math.Clamp(60_000 / items.Length, 40, 1000);
        float used = Low;
        foreach (int i in order)
        {
            field.Bays[0] = field.Bays[0] with { Right = Math.Min(all, used + field.Form(i).Reach) };
            Pose pose = workers[0].Separator.Placer.Leftmost(i, 0, tries)
                ?? new(0, workers[0].Separator.Placer.AnyAngle(i), 0, 0);
            Turned form = field.Form(i).At(pose.Angle);
            if (field.Evaluate(i, form, pose.X, pose.Y, float.Epsilon) > 0 || !field.Bays[0].Takes(form))
                pose = pose with { X = used - form.MinX, Y = field.Bays[0].Bottom - form.MinY };
            field.Put(i, pose);
            used = Math.Max(used, field.Right(i));
        }

        Keep(field);
    }

    private void Keep(Field field)
    {
        field.Poses.AsSpan(0, best.Length).CopyTo(best);
        length = Low;
        for (int i = 0; i < best.Length; i++)
            length = Math.Max(length, field.Right(i));
    }

    /// <summary>Gives a worker its next attempt.</summary>
    private void Next(StripWorker worker)
    {
        float net = length - Low;
        switch (phase)
        {
            case StripAttempt.Descend:
                worker.Squeeze(StripAttempt.Descend, best, length, Low + (net * (1 - step)));
                break;
            case StripAttempt.Compress:
                worker.Squeeze(StripAttempt.Compress, best, length, Low + (net * (1 - squeeze)));
                break;
            default:
                if (pool.Count == 0)
                    worker.Squeeze(StripAttempt.Explore, best, length, Low + (net * (1 - LeastStep)));
                else
                    worker.Disrupt(FromPool(worker.Chance), large, Low + (net * (1 - LeastStep)));
                break;
        }
    }

    /// <summary>One of the layouts that came close, rather one with little loss: half a normal curve over their order.</summary>
    private Pose[] FromPool(Chance chance)
    {
        double normal = Math.Sqrt(-2 * Math.Log(1 - chance.Share())) * Math.Cos(2 * Math.PI * chance.Share());
        return pool[Math.Min((int)(Math.Abs(normal) * 0.25 * pool.Count), pool.Count - 1)].Poses;
    }

    /// <summary>Takes over what the workers reached, in their order.</summary>
    private void Gather()
    {
        StripWorker? winner = workers.Where(w => w.Attempt != StripAttempt.None && w.Separator.IsSolved && w.Target < length).MinBy(w => w.Target);
        if (winner is not null)
        {
            Keep(winner.Field);
            Won(winner);
            better?.Invoke(Result());
        }

        foreach (StripWorker worker in workers)
        {
            if (worker.Attempt != StripAttempt.None && (worker.Separator.IsSolved || worker.Target >= length))
                worker.Attempt = StripAttempt.None;
            else if (worker.Attempt != StripAttempt.None && worker.Separator.HasGivenUp)
                Lost(worker);
        }
    }

    private void Won(StripWorker winner)
    {
        pool.Clear();
        int sweeps = winner.Separator.Sweeps;
        if (winner.Attempt == StripAttempt.Compress)
            return;
        phase = StripAttempt.Descend;
        if (winner.Attempt == StripAttempt.Descend)
            step = Math.Clamp(sweeps < 30 ? step * 1.4f : sweeps > 100 ? step * 0.5f : step, LeastStep, LargestStep);
    }

    private void Lost(StripWorker worker)
    {
        StripAttempt attempt = worker.Attempt;
        worker.Attempt = StripAttempt.None;
        if (attempt == StripAttempt.Descend && step > LeastStep)
        {
            step = Math.Max(LeastStep, step * 0.3f);
            return;
        }

        if (attempt == StripAttempt.Compress)
        {
            if (phase == StripAttempt.Compress && (squeeze *= 0.5f) < LeastSqueeze)
                phase = StripAttempt.Explore;
            return;
        }

        int at = pool.FindIndex(p => p.Loss > worker.Separator.BestLoss);
        pool.Insert(at < 0 ? pool.Count : at, (worker.Separator.BestLoss, worker.Separator.Best.ToArray()));
        if (phase == StripAttempt.Descend)
            (phase, squeeze) = (StripAttempt.Compress, LeastStep * 0.5f);
    }

    private ContourResult Result()
    {
        List<ContourSpot> spots = [.. items.Select((item, i) => job.Spot(item, best[i]))];
        ContourStrip strip = job.Problem.Strip!;
        double used = spots.Select((s, i) => job.RightEnd(items[i], s)).Max() + strip.EdgeMarginMm;
        return new([new(null, spots)], used, 0, job.DrawnArea(items) / (strip.WidthMm * used), []);
    }
}
