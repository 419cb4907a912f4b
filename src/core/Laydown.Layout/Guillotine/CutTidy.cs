using Laydown.Layout.Packing;

namespace Laydown.Layout.Guillotine;

/// <summary>Makes a whole layout better without leaving anything out: worth of offcuts, fewer different layouts, groups together, larger offcuts.</summary>
/// <remarks>
/// Ruin and recreate as in the walk, mostly on the emptiest sheet, or on sheets between which a group is parted. Where offcuts are worth money a dearer
/// sheet may be opened.
/// </remarks>
internal sealed class CutTidy
{
    /// <summary>Steps without gain after which no more is expected.</summary>
    private const int Patience = 4000;

    /// <summary>So often a node of the wanted sheet is looked for by chance.</summary>
    private const int Looks = 8;

    private readonly CutJob job;
    private readonly Chance chance;
    private readonly CutFill fill;
    private readonly long dearer;
    private CutForest here, next;
    private CutRank rank, bestRank;
    private int idle;

    internal CutTidy(CutJob job, long seed)
    {
        this.job = job;
        chance = new(seed);
        fill = new(job, chance, gather: true);

        // A sheet is worth no more than its price: with nothing to get for offcuts none is opened for them.
        dearer = job.Problem.Rules.OffcutWorth > 0 && job.Costs.Count > 1 ? job.Costs.Max() : 0;
        (here, next, Best) = (new(job), new(job), new(job));
    }

    internal CutForest Best { get; }

    /// <summary>Whether anything but cost counts and more steps may gain.</summary>
    internal bool MayGain => (job.Problem.Rules.OffcutLeastSide > 0 || here.Apart > 0) && idle < Patience;

    /// <summary>Goes on from a layout of all pieces; true where none was better so far.</summary>
    internal bool Start(CutForest from)
    {
        here.CopyFrom(from);
        (rank, idle) = (CutRank.Of(from, job), 0);
        bool better = Best.MissingCount > 0 || rank.CompareTo(bestRank) < 0;
        if (better)
            Keep();
        return better;
    }

    /// <summary>Some steps; true where the best became better.</summary>
    internal bool Go(int steps, CancellationToken stop)
    {
        CutRank before = bestRank;
        for (int i = 0; i < steps && MayGain && !stop.IsCancellationRequested; i++)
            Step();
        return bestRank.CompareTo(before) < 0;
    }

    private void Step()
    {
        next.CopyFrom(here);
        Ruin();
        fill.Run(next, here.Cost + (dearer > 0 && chance.Below(4) == 0 ? dearer : 0));
        idle++;
        if (next.MissingCount > 0)
            return;

        CutRank found = CutRank.Of(next, job);
        if (found.CompareTo(rank) > 0)
            return;

        (here, next, rank) = (next, here, found);
        if (rank.CompareTo(bestRank) < 0)
            Keep();
    }

    private void Keep()
    {
        Best.CopyFrom(here);
        (bestRank, idle) = (rank, 0);
    }

    private void Ruin()
    {
        if (next.Apart > 0 && chance.Below(2) == 0)
        {
            RuinTwo();
            return;
        }

        int slot = chance.Below(4) == 0 ? -1 : Emptiest();
        for (int i = 1 + chance.Below(5); i > 0 && next.Live.Length > 0; i--)
            next.TakeOut(Drawn(slot));
    }

    // A sheet with a piece of a group, and another that carries some of the same.
    private void RuinTwo()
    {
        int piece = Drawn(-1);
        for (int look = 0; look < Looks && !IsOfGroup(piece); look++)
            piece = Drawn(-1);
        if (!IsOfGroup(piece))
            return;

        int one = next[piece].Sheet, group = job.GroupOf[next[piece].Type], two = one;
        foreach (int slot in next.Open)
            if (slot != one && next.Carries(slot, group) && (two == one || chance.Below(2) == 0))
                two = slot;
        next.TakeOut(piece);
        for (int i = 2 + chance.Below(6); i > 0 && next.Live.Length > 0; i--)
            next.TakeOut(Drawn(i % 2 == 0 ? one : two));
    }

    private bool IsOfGroup(int node) => next[node].Kind == CutKind.Piece && job.Types[next[node].Type].Group >= 0;

    // Something to take out, of a sheet if it is found soon.
    private int Drawn(int slot)
    {
        int node = next.Live[chance.Below(next.Live.Length)];
        for (int look = 0; slot >= 0 && look < Looks && next[node].Sheet != slot; look++)
            node = next.Live[chance.Below(next.Live.Length)];
        return node;
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
}
