using Laydown.Layout.Packing;
using Laydown.Layout.Search;

namespace Laydown.Layout.Contours;

/// <summary>Shrinks the last of some bays: pushes the best layout together, moves the overlaps apart, and where that fails starts from layouts that came close.</summary>
/// <remarks>[Gardeyn2025]; here all workers race at the same length, exchange after fixed counts of sweeps, and the step of pushing adapts.</remarks>
internal sealed class BaySearch
{
    /// <summary>Sweeps of each worker that make a round.</summary>
    internal const int SweepsOfRound = 8;

    private const float LeastStep = 0.001f, LeastSqueeze = 0.00004f;

    private readonly CancellationToken stop;
    private readonly BayWorker[] workers;
    private readonly int[] large;
    private readonly BayPool pool = new();
    private readonly float low, largestStep;
    private float step, squeeze;
    private BayAttempt phase = BayAttempt.Descend;

    internal BaySearch(IReadOnlyList<Field> fields, IReadOnlyList<Chance> chances, float largestStep, CancellationToken stop)
    {
        workers = [.. fields.Select((f, w) => new BayWorker(f, chances[w]))];
        (this.stop, this.largestStep, step) = (stop, largestStep, largestStep);
        low = fields[0].Bays[^1].Left;
        Best = new Pose[fields[0].Movable];
        large = Large(fields[0]);
    }

    /// <summary>The best poses without overlap.</summary>
    internal Pose[] Best { get; }

    /// <summary>Right end of what lies in the open bay; its left side where nothing does.</summary>
    internal float Right { get; private set; }

    /// <summary>Whether nothing is left in the open bay.</summary>
    internal bool IsEmptied => Right <= low;

    /// <summary>The placer of the first worker, for a first layout.</summary>
    internal Placer Placer => workers[0].Separator.Placer;

    /// <summary>The step that is tried next, as a share of the open bay's used length.</summary>
    internal float Step
    {
        get => step;
        set => step = value;
    }

    /// <summary>Takes the poses of the first field, which must be without overlap.</summary>
    internal void Begin() => Keep(workers[0].Field);

    /// <summary>Rounds of all workers until none is left, a stop is asked for, or the open bay is emptied.</summary>
    /// <returns>Rounds that were made.</returns>
    internal long Run(long rounds, Action? better)
    {
        long round = 0;
        for (; round < rounds && !stop.IsCancellationRequested && !IsEmptied; round++)
        {
            foreach (BayWorker worker in workers.Where(w => w.IsDone))
                Next(worker);
            if (workers.Length == 1)
                workers[0].Run(SweepsOfRound, stop);
            else
                Parallel.ForEach(workers, w => w.Run(SweepsOfRound, stop));
            if (Gather())
                better?.Invoke();
        }

        return round;
    }

    /// <summary>Moves apart what lies at the given poses, or anywhere where none is given, without shortening the open bay.</summary>
    /// <returns>Whether a worker got all apart, which is then <see cref="Best"/>; and the rounds that were made.</returns>
    internal (bool Solved, long Rounds) Solve(IReadOnlyList<Pose?> poses, long rounds)
    {
        foreach (BayWorker worker in workers)
            worker.Spread(poses);
        long round = 0;
        for (; round < rounds && !stop.IsCancellationRequested && !workers.All(w => w.IsDone) && !workers.Any(w => w.Separator.IsSolved); round++)
        {
            if (workers.Length == 1)
                workers[0].Run(SweepsOfRound, stop);
            else
                Parallel.ForEach(workers, w => w.Run(SweepsOfRound, stop));
        }

        if (workers.FirstOrDefault(w => w.Separator.IsSolved) is not { } winner)
            return (false, round);
        Keep(winner.Field);
        return (true, round);
    }

    /// <summary>How many rounds stand for a number of sweeps of each worker.</summary>
    internal static long Rounds(SearchRules rules) => rules.Iterations == long.MaxValue ? long.MaxValue : (rules.Iterations + SweepsOfRound - 1) / SweepsOfRound;

    private static int[] Large(Field field)
    {
        int[] byHull = [.. Enumerable.Range(0, field.Movable).OrderByDescending(i => field.Form(i).HullRoot)];
        double all = byHull.Sum(i => (double)field.Form(i).HullRoot * field.Form(i).HullRoot), sum = 0;
        return [.. byHull.TakeWhile((i, n) => (sum += field.Form(i).HullRoot * field.Form(i).HullRoot) <= 0.75 * all || n < 2)];
    }

    private void Keep(Field field)
    {
        field.Poses.AsSpan(0, Best.Length).CopyTo(Best);
        Right = low;
        for (int i = 0; i < Best.Length; i++)
        {
            if (Best[i].Bay == field.Bays.Length - 1)
                Right = Math.Max(Right, field.Right(i));
        }
    }

    /// <summary>Gives a worker its next attempt.</summary>
    private void Next(BayWorker worker)
    {
        float net = Right - low;
        if (phase == BayAttempt.Descend)
            worker.Squeeze(phase, Best, Right, low + (net * (1 - step)));
        else if (phase == BayAttempt.Compress)
            worker.Squeeze(phase, Best, Right, low + (net * (1 - squeeze)));
        else if (pool.IsEmpty)
            worker.Squeeze(BayAttempt.Explore, Best, Right, low + (net * (1 - LeastStep)));
        else
            worker.Disrupt(pool.Pick(worker.Chance), large, low + (net * (1 - LeastStep)));
    }

    /// <summary>Takes over what the workers reached, in their order.</summary>
    private bool Gather()
    {
        BayWorker? winner = workers.Where(w => w.Attempt != BayAttempt.None && w.Separator.IsSolved && w.Target < Right).MinBy(w => w.Target);
        if (winner is not null)
        {
            Keep(winner.Field);
            Won(winner);
        }

        foreach (BayWorker worker in workers.Where(w => w.Attempt != BayAttempt.None))
        {
            if (worker.Separator.IsSolved || worker.Target >= Right)
                worker.Attempt = BayAttempt.None;
            else if (worker.Separator.HasGivenUp)
                Lost(worker);
        }

        return winner is not null;
    }

    private void Won(BayWorker winner)
    {
        pool.Clear();
        int sweeps = winner.Separator.Sweeps;
        if (winner.Attempt == BayAttempt.Compress)
            return;
        phase = BayAttempt.Descend;
        if (winner.Attempt == BayAttempt.Descend)
            step = Math.Clamp(sweeps < 30 ? step * 1.4f : sweeps > 100 ? step * 0.5f : step, LeastStep, largestStep);
    }

    private void Lost(BayWorker worker)
    {
        BayAttempt attempt = worker.Attempt;
        worker.Attempt = BayAttempt.None;
        if (attempt == BayAttempt.Descend && step > LeastStep)
        {
            step = Math.Max(LeastStep, step * 0.3f);
            return;
        }

        if (attempt == BayAttempt.Compress)
        {
            if (phase == BayAttempt.Compress && (squeeze *= 0.5f) < LeastSqueeze)
                phase = BayAttempt.Explore;
            return;
        }

        pool.Add(worker.Separator.BestLoss, worker.Separator.Best);
        if (phase == BayAttempt.Descend)
            (phase, squeeze) = (BayAttempt.Compress, LeastStep * 0.5f);
    }
}
