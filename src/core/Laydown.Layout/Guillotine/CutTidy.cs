using Laydown.Layout.Packing;

namespace Laydown.Layout.Guillotine;

/// <summary>Makes the offcuts of a whole layout larger without making it dearer.</summary>
/// <remarks>Ruin and recreate as in the walk, mostly on the emptiest sheet; the worth of offcuts is the sum of their squared areas: one large counts more than two small.</remarks>
internal sealed class CutTidy
{
    /// <summary>Steps without gain after which no more is expected.</summary>
    private const int Patience = 4000;

    /// <summary>So often a node of the emptiest sheet is looked for by chance.</summary>
    private const int Looks = 8;

    private readonly CutJob job;
    private readonly Chance chance;
    private readonly CutFill fill;
    private readonly int leastSide;
    private CutForest here, next;
    private double worth, bestWorth;
    private int idle;

    internal CutTidy(CutJob job, long seed)
    {
        this.job = job;
        chance = new(seed);
        fill = new(job, chance);
        leastSide = job.Problem.Rules.OffcutLeastSide;
        (here, next, Best) = (new(job), new(job), new(job));
    }

    internal CutForest Best { get; }

    /// <summary>Whether offcuts are wanted and more steps may find better ones.</summary>
    internal bool MayGain => leastSide > 0 && idle < Patience;

    internal void Start(CutForest from)
    {
        here.CopyFrom(from);
        Best.CopyFrom(from);
        worth = bestWorth = Worth(here);
        idle = 0;
    }

    /// <summary>Some steps; true where the best became better.</summary>
    internal bool Go(int steps, CancellationToken stop)
    {
        double before = bestWorth;
        for (int i = 0; i < steps && MayGain && !stop.IsCancellationRequested; i++)
            Step();
        return bestWorth > before;
    }

    private void Step()
    {
        next.CopyFrom(here);
        Ruin();
        fill.Run(next, here.Cost);
        idle++;
        if (next.MissingCount > 0 || next.Cost > here.Cost)
            return;

        double found = Worth(next);
        if (found < worth)
            return;

        (here, next, worth) = (next, here, found);
        if (worth <= bestWorth)
            return;

        Best.CopyFrom(here);
        (bestWorth, idle) = (worth, 0);
    }

    private void Ruin()
    {
        int slot = chance.Below(4) == 0 ? -1 : Emptiest();
        for (int i = 1 + chance.Below(5); i > 0 && next.Live.Length > 0; i--)
        {
            int node = next.Live[chance.Below(next.Live.Length)];
            for (int look = 0; slot >= 0 && look < Looks && next[node].Sheet != slot; look++)
                node = next.Live[chance.Below(next.Live.Length)];
            next.TakeOut(node);
        }
    }

    private int Emptiest()
    {
        (int found, double least) = (-1, double.PositiveInfinity);
        foreach (int slot in next.Open)
        {
            double fill = (double)next.SheetAt(slot).Area / job.Problem.Stocks[next.SheetAt(slot).Stock].Area;
            if (fill < least)
                (found, least) = (slot, fill);
        }

        return found;
    }

    private double Worth(CutForest forest)
    {
        double sum = 0;
        foreach (ref readonly CutNode n in forest.Nodes)
            if (n.Kind == CutKind.Bare && n.W >= leastSide && n.H >= leastSide && n.Stage <= job.MostStages)
                sum += (double)n.Area * n.Area;
        return sum;
    }
}
