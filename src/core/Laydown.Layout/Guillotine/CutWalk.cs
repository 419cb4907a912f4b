using Laydown.Layout.Packing;

namespace Laydown.Layout.Guillotine;

/// <summary>One walk of ruin and recreate towards a goal: all pieces on sheets that together cost less than the best known.</summary>
/// <remarks>
/// [GardeynWauters2022]: the limit of cost is the goal, the area of missing pieces is walked down; once no piece is missing the goal
/// is set lower and sheets are closed until it holds. A step may be worse by a threshold [DueckScheuer1990] that falls from a share of the mean area of
/// a piece to nothing, again and again and ever slower: it leaves a place from which no small step leads on. Where there are sheets of several sizes every
/// cycle begins on other ones: to close whole sheets is no small step.
/// </remarks>
internal sealed class CutWalk
{
    /// <summary>Steps of the shortest cycle from hot to cold, for no piece and more for each; every cycle without success is followed by one twice as long, where all sheets are of one size.</summary>
    private const int CycleLeast = 1000, CycleEach = 100;

    /// <summary>How much worse a step may be at the hottest, as a share of the mean area of a piece.</summary>
    private const double HeatShare = 0.3;

    /// <summary>Where there are sheets of several sizes the next cycle is longer by a share of one to so many; sheets closed at its start, at most.</summary>
    private const int CycleShare = 4, MostClosed = 5;

    /// <summary>Nodes taken out in a step.</summary>
    private const int RuinLeast = 4, RuinMost = 10;

    /// <summary>One step of so many takes nodes of two sheets alone, looked for by chance so often for each.</summary>
    private const int NearOneOf = 3, NearLooks = 40;

    /// <summary>With more pieces the shortest cycle grows no more.</summary>
    private const int ManyPieces = 200;

    /// <summary>With more types than these the first filling takes them in a plain order: to weigh all against all takes too long.</summary>
    private const int ManyTypes = 150;

    private readonly CutJob job;
    private readonly Chance chance;
    private readonly CutFill fill;
    private readonly CutMixes mixes;
    private readonly double heat;
    private readonly long shortest;
    private long cycle;
    private CutForest here, next;
    private long limit = long.MaxValue;
    private long step;

    internal CutWalk(CutJob job, long seed)
    {
        this.job = job;
        chance = new(seed);
        fill = new(job, chance);
        mixes = new(job, chance);
        (here, next, Best) = (new(job), new(job), new(job));
        int pieces = Math.Max(1, here.MissingCount);
        heat = HeatShare * here.MissingArea / pieces;
        shortest = cycle = CycleLeast + (CycleEach * Math.Min(pieces, ManyPieces));
    }

    /// <summary>The cheapest filling without missing pieces; else the one that misses least.</summary>
    internal CutForest Best { get; }

    /// <summary>A first filling without limit.</summary>
    internal void Start()
    {
        if (job.Types.Count > ManyTypes)
            fill.InOrder(here);

        fill.Run(here, long.MaxValue, greedy: true);
        Keep();
    }

    /// <summary>Some steps towards a goal: the most the sheets may cost.</summary>
    internal void Go(long goal, long steps, CancellationToken stop)
    {
        Aim(goal);
        for (long i = 0; i < steps && !stop.IsCancellationRequested && limit >= job.LeastCost; i++)
            if (Step())
                Aim(Best.Cost - 1);
    }

    private void Aim(long most)
    {
        if (most >= limit)
            return;

        limit = most;
        if (limit < job.LeastCost)
            return;

        while (here.Cost > limit)
            here.CloseSheet(here.Open[chance.Below(here.Open.Length)]);
        fill.Run(here, limit);
        (step, cycle) = (0, Math.Max(shortest, cycle / 2));
        Keep();
    }

    // One step; true where all pieces have found a place within the goal.
    private bool Step()
    {
        if (step >= cycle)
            Turn();
        next.CopyFrom(here);
        Ruin();
        fill.Run(next, limit);
        double cold = step++ / (double)cycle;
        double slack = heat * (1 - cold) * (1 - cold) * chance.Share();
        if (next.MissingArea <= here.MissingArea + slack)
            (here, next) = (next, here);
        Keep();
        return here.MissingCount == 0;
    }

    // A cycle is over: a longer one begins, on other sheets where there are several sizes.
    private void Turn()
    {
        step = 0;
        if (!mixes.MayDiffer)
        {
            cycle *= 2;
            return;
        }

        cycle += cycle / CycleShare;
        next.CopyFrom(here);
        for (int close = 1 + chance.Below(Math.Min(MostClosed, Math.Max(1, next.Open.Length))); close > 0 && next.Open.Length > 0; close--)
            next.CloseSheet(next.Open[chance.Below(next.Open.Length)]);
        if (!mixes.Open(next, limit))
            return;

        fill.Run(next, limit);
        (here, next) = (next, here);
        Keep();
    }

    private void Ruin()
    {
        int count = RuinLeast + chance.Below(RuinMost - RuinLeast + 1);
        if (chance.Below(NearOneOf) == 0 && next.Live.Length > 0)
        {
            // Nodes of two sheets alone: room for pieces of one on the other.
            int one = next[Drawn()].Sheet, two = next[Drawn()].Sheet;
            for (int look = NearLooks * count; look > 0 && count > 0 && next.Live.Length > 0; look--)
                if (Drawn() is int node && (next[node].Sheet == one || next[node].Sheet == two))
                {
                    next.TakeOut(node);
                    count--;
                }

            return;
        }

        for (; count > 0 && next.Live.Length > 0; count--)
            next.TakeOut(Drawn());
    }

    private int Drawn() => next.Live[chance.Below(next.Live.Length)];

    private void Keep()
    {
        if (here.MissingArea < Best.MissingArea || (here.MissingArea == Best.MissingArea && here.Cost < Best.Cost))
            Best.CopyFrom(here);
    }
}
