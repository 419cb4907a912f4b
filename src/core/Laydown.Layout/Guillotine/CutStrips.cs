namespace Laydown.Layout.Guillotine;

/// <summary>Cuts that free the place of a piece from a bare rest: a strip as wide as the piece, then across it.</summary>
/// <param name="job">The problem.</param>
/// <param name="pool">The nodes.</param>
/// <param name="live">What can be taken out: parts are added to it.</param>
internal sealed class CutStrips(CutJob job, CutPool pool, CutLive live)
{
    /// <summary>Cuts a rest; no rest that is left is listed yet.</summary>
    /// <param name="at">The rest.</param>
    /// <param name="w">Width of the place.</param>
    /// <param name="h">Height of the place.</param>
    /// <param name="upright">Direction of the cut that comes first.</param>
    /// <param name="left">The rests this leaves that may take pieces.</param>
    /// <returns>The place.</returns>
    internal int Cut(int at, int w, int h, bool upright, Span<int> left)
    {
        int holder = at, count = 0;
        bool inside = false;
        if (IsNarrow(at, upright, upright ? w : h))
        {
            // A strip of the least width there may be: the piece is trimmed out of it, over its full length even where nothing lies above.
            int least = job.Problem.Rules.LeastStrip;
            if (least < (upright ? pool[at].W : pool[at].H))
                holder = StripOf(holder, upright, least, out left[count++]);
            upright = !upright;
            inside = (upright ? w : h) == (upright ? pool[holder].W : pool[holder].H);
            if (inside)
                holder = Inside(holder, upright);
        }

        // A strip as wide as the piece; it is cut once more, or is the piece.
        for (int cut = 0; cut < 2; cut++, upright = !upright)
        {
            int size = upright ? w : h;
            if (size == (upright ? pool[holder].W : pool[holder].H))
                continue;
            holder = StripOf(holder, upright, size, out int rest);
            if (!inside)
                left[count++] = rest;
        }

        return holder;
    }

    /// <summary>Whether a node is a rest of the first stage too narrow to be a strip.</summary>
    internal bool IsSliver(in CutNode n) =>
        n.Parent >= 0 && n.Stage == 1 && (pool[n.Parent].Upright ? n.W : n.H) < job.Problem.Rules.LeastStrip;

    // A part with one child as large as itself: what is cut from that is no neighbour of the part.
    private int Inside(int at, bool upright)
    {
        int inner = pool.Cut(at, at, (short)(pool[at].Stage + 1), upright, upright ? pool[at].W : pool[at].H);
        ref CutNode node = ref pool[at];
        (node.Kind, node.Upright, node.First, node.Rest) = (CutKind.Part, upright, CutNode.None, CutNode.None);
        pool.Hook(inner, at);
        live.Add(at);
        return inner;
    }

    private bool IsNarrow(int at, bool upright, int size)
    {
        int room = upright ? pool[at].W : pool[at].H;
        return size < room && size < job.Problem.Rules.LeastStrip && StageOf(at, upright) == 1;
    }

    // How many stages of cuts free a strip that is cut from a node in a direction.
    private int StageOf(int at, bool upright)
    {
        int parent = pool[at].Parent;
        bool same = parent >= 0 ? pool[parent].Upright == upright : pool[at].Stage > 0 && pool[at].Upright == upright;
        return same ? pool[at].Stage : pool[at].Stage + 1;
    }

    // Parts a bare node in two: a strip, and the rest beside it. The strip is a node of its own; the rest is one too, or what is left of the node.
    private int StripOf(int at, bool upright, int size, out int rest)
    {
        int parent = pool[at].Parent;
        if (parent >= 0 && pool[parent].Upright == upright)
        {
            // The parent is cut in this direction already: one child more.
            int strip = pool.Cut(at, parent, pool[at].Stage, upright, size);
            pool.Hook(strip, parent);
            if (upright)
                pool[at].W -= size;
            else
                pool[at].H -= size;
            rest = at;
            return strip;
        }

        short stage = (short)StageOf(at, upright);
        int one = pool.Cut(at, at, stage, upright, size);
        rest = pool.Cut(at, at, stage, upright, (upright ? pool[at].W : pool[at].H) - size);
        ref CutNode node = ref pool[at];
        (node.Kind, node.Upright, node.First, node.Rest) = (CutKind.Part, upright, CutNode.None, rest);
        pool.Hook(rest, at);
        pool.Hook(one, at);
        live.Add(at);
        return one;
    }
}
