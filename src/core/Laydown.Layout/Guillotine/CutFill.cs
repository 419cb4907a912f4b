using System.Numerics;
using Laydown.Layout.Packing;

namespace Laydown.Layout.Guillotine;

/// <summary>Puts missing pieces back: the one with the fewest places first, each where the least worth of rests is lost.</summary>
/// <remarks>
/// The recreate step of [GardeynWauters2022]. A rest of area a is worth a^1.25, so that few large rests are worth more than many small ones; written
/// with two square roots, which are exact on every machine. For every type the best place is kept and looked for anew only when that place is gone.
/// </remarks>
internal sealed class CutFill
{
    /// <summary>One place of so many on average is not seen.</summary>
    private const int Blink = 20;

    /// <summary>One piece of so many is first cut off the way that leaves the smaller worth: greed alone never leads to a board without waste.</summary>
    private const int Flip = 3, SmallFlip = 5;

    /// <summary>One piece of so many is drawn by chance instead of taken by its places.</summary>
    private const int Stray = 80, SmallStray = 10;

    /// <summary>With so few pieces a step would put all back as it was: more is left to chance, and a loss is seen larger by up to a share.</summary>
    private const int FewPieces = 60;

    /// <inheritdoc cref="FewPieces"/>
    private const double SmallShare = 0.3;

    /// <summary>A rest beside pieces of the same group counts as so much of its worth.</summary>
    private const double TogetherShare = 0.8;

    private readonly CutJob job;
    private readonly Chance chance;
    private readonly int[] active;
    private readonly int[] rests = new int[3];
    private readonly int[] places;
    private readonly CutChoice[] best;
    private readonly int[] shuffled;
    private readonly int stages;
    private readonly bool plain, gather;
    private readonly int leastStrip;
    private readonly int typeCount;
    private readonly int[] typeW, typeH;
    private readonly bool[] typeTurns;
    private readonly bool few;
    private int activeCount, untilBlink = Blink, flip = int.MaxValue, stray = int.MaxValue;

    /// <param name="job">The problem.</param>
    /// <param name="chance">Chance of its walk.</param>
    /// <param name="gather">Whether a sheet that carries pieces of the same group is preferred.</param>
    internal CutFill(CutJob job, Chance chance, bool gather = false)
    {
        (this.job, this.chance) = (job, chance);
        this.gather = gather && job.Groups > 0;
        typeCount = job.Types.Count;
        (active, places, best, shuffled) = (new int[typeCount], new int[typeCount], new CutChoice[typeCount], new int[job.Problem.Stocks.Count]);
        typeW = [.. job.Types.Select(t => t.W)];
        typeH = [.. job.Types.Select(t => t.H)];
        typeTurns = [.. job.Types.Select(t => t.MayTurn)];
        few = job.Types.Sum(t => (long)t.Copies) <= FewPieces;
        stages = job.MostStages;
        leastStrip = job.Problem.Rules.LeastStrip;
        plain = job.Problem.Rules.MostStages == 0 && leastStrip == 0;
    }

    /// <summary>Puts back what finds a place while all open sheets together cost at most <paramref name="limit"/>.</summary>
    /// <param name="forest">What is filled.</param>
    /// <param name="limit">Most the sheets may cost.</param>
    /// <param name="greedy">Whether nothing is left to chance: a first filling, whose sheets come out alike where they can.</param>
    internal void Run(CutForest forest, long limit, bool greedy = false)
    {
        flip = greedy ? int.MaxValue : few ? SmallFlip : Flip;
        stray = greedy ? int.MaxValue : few ? SmallStray : Stray;
        activeCount = 0;
        for (int t = 0; t < typeCount; t++)
            if (forest.Left[t] > 0)
            {
                active[activeCount++] = t;
                LookAll(forest, t, count: true);
            }

        while (activeCount > 0)
        {
            int i = chance.Below(stray) == 0 ? chance.Below(activeCount) : Scarcest(), type = active[i];
            if (places[type] == 0 && !Open(forest, type, limit))
            {
                active[i] = active[--activeCount];
                continue;
            }

            CutChoice choice = best[type];
            if (choice.Node < 0)
            {
                active[i] = active[--activeCount];
                continue;
            }

            Put(forest, i, type, choice);
        }
    }

    /// <summary>Puts back all that finds a place, largest first, with no limit of cost: a quick first filling.</summary>
    internal void InOrder(CutForest forest)
    {
        activeCount = 0;
        foreach (int type in Enumerable.Range(0, typeCount).OrderByDescending(t => job.Types[t].Area).ThenBy(t => t))
            for (int copies = forest.Left[type]; copies > 0; copies--)
            {
                LookAll(forest, type, count: true);
                if (best[type].Node < 0)
                {
                    active[0] = type;
                    activeCount = 1;
                    bool opened = Open(forest, type, long.MaxValue);
                    activeCount = 0;
                    if (!opened || best[type].Node < 0)
                        break;
                }

                CutChoice choice = best[type];
                forest.Put(choice.Node, type, choice.Turned, choice.Upright, rests);
            }
    }

    private void Put(CutForest forest, int i, int type, CutChoice choice)
    {
        CutNode was = forest[choice.Node];
        forest.Put(choice.Node, type, choice.Turned, choice.Upright, rests);
        if (forest.Left[type] == 0)
            active[i] = active[--activeCount];

        // The rest is gone, up to two others have come, three where a strip had to be widened.
        for (int k = 0; k < activeCount; k++)
        {
            int t = active[k];
            places[t] -= Fits(t, was.W, was.H);
            if (best[t].Node == choice.Node)
            {
                LookAll(forest, t, count: false);
                foreach (int rest in rests)
                    if (rest >= 0 && forest[rest].Slot >= 0)
                        places[t] += Fits(t, forest[rest].W, forest[rest].H);
                continue;
            }

            foreach (int rest in rests)
                if (rest >= 0 && forest[rest].Slot >= 0)
                    Look(forest, t, rest, ref best[t], true);
        }
    }

    private int Fits(int t, int w, int h) =>
        (typeW[t] <= w && typeH[t] <= h ? 1 : 0) + (typeTurns[t] && typeH[t] <= w && typeW[t] <= h ? 1 : 0);

    private int Scarcest()
    {
        int found = 0, least = int.MaxValue;
        long area = -1;
        for (int k = 0; k < activeCount; k++)
        {
            int t = active[k];
            long own = (long)typeW[t] * typeH[t];
            if (places[t] < least || (places[t] == least && own > area))
                (found, least, area) = (k, places[t], own);
        }

        return found;
    }

    private void LookAll(CutForest forest, int type, bool count)
    {
        if (count)
            places[type] = 0;
        CutChoice choice = CutChoice.None;
        CutRests bare = forest.Bare;
        ReadOnlySpan<int> nodes = bare.Nodes;
        for (int at = 0; at < nodes.Length; at += CutRests.Step)
            for (uint fits = bare.Fitting(at, typeW[type], typeH[type], typeTurns[type]); fits != 0; fits &= fits - 1)
                Look(forest, type, nodes[at + BitOperations.TrailingZeroCount(fits)], ref choice, count);
        best[type] = choice;
    }

    private void Look(CutForest forest, int type, int node, ref CutChoice choice, bool count)
    {
        ref readonly CutNode n = ref forest[node];
        int w = typeW[type], h = typeH[type];
        if (w <= n.W && h <= n.H)
        {
            if (count)
                places[type]++;
            Try(forest, n, node, w, h, false, Whole(forest, n, type), ref choice);
        }

        if (typeTurns[type] && h <= n.W && w <= n.H)
        {
            if (count)
                places[type]++;
            Try(forest, n, node, h, w, true, Whole(forest, n, type), ref choice);
        }
    }

    private void Try(CutForest forest, in CutNode n, int node, int w, int h, bool turned, double whole, ref CutChoice choice)
    {
        if (flip < int.MaxValue && --untilBlink <= 0)
        {
            untilBlink = 1 + chance.Below((2 * Blink) - 1);
            return;
        }

        int overW = n.W - w, overH = n.H - h;
        if (overW == 0 && overH == 0)
        {
            choice.Keep(whole, node, turned, true);
            return;
        }

        // Both ways leave rests of the same area in sum: where all of them can be used, the way with the larger one leaves the greater worth.
        if (plain && overW >= job.LeastW && overH >= job.LeastH && Math.Min(w, n.W) >= job.LeastW && Math.Min(h, n.H) >= job.LeastH)
        {
            long beside = (long)overW * n.H, above = (long)n.W * overH;
            bool upright = Math.Max(beside, (long)w * overH) >= Math.Max(above, (long)overW * h) == chance.Below(flip) > 0;
            double loss = whole - (upright ? Worth(beside) + Worth((long)w * overH) : Worth(above) + Worth((long)overW * h));
            choice.Keep(few && flip < int.MaxValue ? loss * (1 + (SmallShare * chance.Share())) : loss, node, turned, upright);
            return;
        }

        // How many stages freed the strip and what is cut from it, by the direction of the first cut.
        int same = n.Stage, other = n.Stage + 1;
        bool up = n.Parent >= 0 ? forest[n.Parent].Upright : n.Upright;
        bool bareRoot = n.Stage == 0;
        int upStage = bareRoot ? 1 : up ? same : other, acrossStage = bareRoot ? 1 : up ? other : same;

        // Upright first: a strip as wide as the piece, with the rest above it; beside it a rest of full height.
        if (Narrow(upStage, overW, w))
            choice.Keep(whole - Rest(n.W - leastStrip, n.H, upStage) - Rest(leastStrip, overH, upStage + 1), node, turned, true);
        else if (Allowed(upStage, overW, overH) && !(overW == 0 && Narrow(acrossStage, overH, h)))
            choice.Keep(whole - Rest(overW, n.H, upStage) - Rest(w, overH, overW == 0 ? acrossStage : upStage + 1), node, turned, true);
        if (Narrow(acrossStage, overH, h))
            choice.Keep(whole - Rest(n.W, n.H - leastStrip, acrossStage) - Rest(overW, leastStrip, acrossStage + 1), node, turned, false);
        else if (Allowed(acrossStage, overH, overW) && !(overH == 0 && Narrow(upStage, overW, w)))
            choice.Keep(whole - Rest(n.W, overH, acrossStage) - Rest(overW, h, overH == 0 ? upStage : acrossStage + 1), node, turned, false);
    }

    // A strip of the first stage that must be widened: what lies beside the piece in it is counted as lost.
    private bool Narrow(int stage, int over, int size) => stage == 1 && over > 0 && size < leastStrip;

    // What the bare rest is worth; less for a piece whose group is on the sheet already.
    private double Whole(CutForest forest, in CutNode n, int type) =>
        gather && job.Types[type].Group >= 0 && forest.Carries(n.Sheet, job.GroupOf[type]) ? n.Worth * TogetherShare : n.Worth;

    // The first cut parts two usable strips and needs a stage; trimming to size needs none, but its rest is lost.
    private bool Allowed(int stage, int over, int overAcross)
    {
        return over == 0 || stage <= stages || (overAcross == 0 && stage == stages + 1);
    }

    private double Rest(int w, int h, int stage) =>
        w < job.LeastW || h < job.LeastH || stage > stages ? 0 : Worth((long)w * h);

    internal static double Worth(long area)
    {
        double a = area;
        return a * Math.Sqrt(Math.Sqrt(a));
    }

    // A bare sheet for a type that has no place: any affordable one that takes it, drawn by chance.
    private bool Open(CutForest forest, int type, long limit)
    {
        int count = 0;
        for (int s = 0; s < shuffled.Length; s++)
        {
            if (forest.Free[s] > 0 && forest.Cost + job.Costs[s] <= limit && job.WaysFor(type, s).Count > 0)
                shuffled[count++] = s;
        }

        if (count == 0)
            return false;

        int stock = shuffled[chance.Below(count)];
        IReadOnlyList<int> ways = job.WaysFor(type, stock);
        int slot = forest.OpenSheet(stock, ways[chance.Below(ways.Count)]);
        for (int root = forest.SheetAt(slot).Root; root >= 0; root = forest[root].Next)
            for (int k = 0; k < activeCount; k++)
                if (forest[root].Slot >= 0)
                    Look(forest, active[k], root, ref best[active[k]], true);
        return true;
    }
}
