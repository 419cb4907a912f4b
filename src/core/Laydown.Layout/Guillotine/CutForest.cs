using System.Runtime.CompilerServices;

namespace Laydown.Layout.Guillotine;

/// <summary>Trees of cuts of all open sheets, in one pool of nodes, and the pieces that have no place.</summary>
/// <remarks>
/// Cutting trees whose bare rests are nodes of their own, as in [GardeynWauters2022]; here the order of the children of a part is free, so that its bare
/// children are always one. Copied whole by <see cref="CopyFrom"/>: a few kilobytes for a hundred pieces, cheaper than to undo step by step.
/// </remarks>
internal sealed class CutForest
{
    private readonly CutJob job;
    private CutNode[] nodes = new CutNode[256];
    private int[] bare = new int[128], live = new int[256];
    private int used, spare = CutNode.None, bareCount, liveCount;
    private CutSheet[] sheets = new CutSheet[16];
    private int[] open = new int[16];
    private int sheetUsed, openCount;
    private readonly int[] left, free;
    private readonly CutGroups groups;

    internal CutForest(CutJob job)
    {
        this.job = job;
        groups = new(job.Groups);
        left = [.. job.Types.Select(t => t.Copies)];
        free = [.. job.Problem.Stocks.Select(s => s.Copies ?? int.MaxValue)];
        MissingArea = job.Types.Sum(t => t.Area * t.Copies);
        MissingCount = job.Types.Sum(t => t.Copies);
    }

    /// <summary>Area of all pieces without a place.</summary>
    internal long MissingArea { get; private set; }

    /// <summary>How many pieces have no place.</summary>
    internal int MissingCount { get; private set; }

    /// <summary>What all open sheets cost.</summary>
    internal long Cost { get; private set; }

    /// <summary>Over all groups: sheets that carry pieces of it, less one.</summary>
    internal int Apart => groups.Apart;

    /// <summary>Copies without a place, by type.</summary>
    internal ReadOnlySpan<int> Left => left;

    /// <summary>Sheets still there, by stock.</summary>
    internal ReadOnlySpan<int> Free => free;

    /// <summary>Bare rests that can take a piece.</summary>
    internal ReadOnlySpan<int> Bare => bare.AsSpan(0, bareCount);

    /// <summary>Pieces and parts: what can be taken out.</summary>
    internal ReadOnlySpan<int> Live => live.AsSpan(0, liveCount);

    /// <summary>Open sheets.</summary>
    internal ReadOnlySpan<int> Open => open.AsSpan(0, openCount);

    /// <summary>All nodes of the pool; those not in use have no width.</summary>
    internal ReadOnlySpan<CutNode> Nodes => nodes.AsSpan(0, used);

    internal ref readonly CutNode this[int node] => ref nodes[node];

    internal ref readonly CutSheet SheetAt(int slot) => ref sheets[slot];

    internal void CopyFrom(CutForest other)
    {
        Room(ref nodes, other.used);
        Room(ref bare, other.bareCount);
        Room(ref live, other.liveCount);
        Room(ref sheets, other.sheetUsed);
        Room(ref open, other.sheetUsed);
        Array.Copy(other.nodes, nodes, other.used);
        Array.Copy(other.bare, bare, other.bareCount);
        Array.Copy(other.live, live, other.liveCount);
        Array.Copy(other.sheets, sheets, other.sheetUsed);
        Array.Copy(other.open, open, other.openCount);
        groups.CopyFrom(other.groups);
        Array.Copy(other.left, left, left.Length);
        Array.Copy(other.free, free, free.Length);
        (used, spare, bareCount, liveCount) = (other.used, other.spare, other.bareCount, other.liveCount);
        (sheetUsed, openCount) = (other.sheetUsed, other.openCount);
        (MissingArea, MissingCount, Cost) = (other.MissingArea, other.MissingCount, other.Cost);
    }

    /// <summary>Whether a sheet carries pieces of a group.</summary>
    internal bool Carries(int slot, int group) => groups.Carries(slot, group);

    internal bool IsBetterThan(CutForest other) => MissingArea < other.MissingArea || (MissingArea == other.MissingArea && Cost < other.Cost);

    /// <summary>Opens a bare sheet.</summary>
    /// <param name="stock">Its stock; one must be there.</param>
    /// <param name="way">In which way its keep-outs are cut out.</param>
    internal int OpenSheet(int stock, int way)
    {
        int slot = 0;
        while (slot < sheetUsed && sheets[slot].Stock >= 0)
            slot++;
        if (slot == sheetUsed)
            Room(ref sheets, ++sheetUsed);
        Room(ref open, openCount + 1);
        int first = CutNode.None;
        IReadOnlyList<SheetPart> parts = job.Parts[stock][way];
        for (int i = parts.Count - 1; i >= 0; i--)
        {
            int root = Take();
            ref CutNode node = ref nodes[root];
            node = new()
            {
                Parent = CutNode.None,
                First = CutNode.None,
                Next = first,
                Prev = i,
                Rest = CutNode.None,
                W = parts[i].Place.W,
                H = parts[i].Place.H,
                Sheet = slot,
                Slot = -1,
                Kind = CutKind.Bare,
                Upright = parts[i].Upright,
                Stage = (short)parts[i].Stage,
            };
            List(root);
            first = root;
        }

        sheets[slot] = new() { Stock = stock, Way = way, Root = first, Place = openCount };
        open[openCount++] = slot;
        free[stock]--;
        Cost += job.Costs[stock];
        return slot;
    }

    /// <summary>Closes a sheet; its pieces lose their places.</summary>
    internal void CloseSheet(int slot)
    {
        ref CutSheet sheet = ref sheets[slot];
        for (int root = sheet.Root; root != CutNode.None;)
        {
            int next = nodes[root].Next;
            DropTree(root);
            root = next;
        }

        free[sheet.Stock]++;
        Cost -= job.Costs[sheet.Stock];
        int last = open[--openCount];
        open[sheet.Place] = last;
        sheets[last].Place = sheet.Place;
        sheet = new() { Stock = -1 };
    }

    /// <summary>Takes a piece or a part out; its room joins the bare rest beside it. An empty sheet is closed.</summary>
    internal void TakeOut(int node)
    {
        // A part whose last child goes is bare as a whole: go up to the topmost such part.
        while (nodes[node].Parent is var p and >= 0 && OnlyChild(node, p))
            node = p;
        int parent = nodes[node].Parent, slot = nodes[node].Sheet;
        if (parent < 0)
        {
            Strip(node);
            if (sheets[slot].Pieces == 0)
                CloseSheet(slot);
            return;
        }

        Strip(node);
        int rest = nodes[parent].Rest;
        if (rest < 0)
        {
            nodes[parent].Rest = node;
            List(node);
            return;
        }

        // Join with the bare child there is.
        Unlist(rest);
        Unhook(node);
        if (nodes[parent].Upright)
            nodes[rest].W += nodes[node].W;
        else
            nodes[rest].H += nodes[node].H;
        Give(node);
        List(rest);
    }

    /// <summary>Puts a copy of a type into a bare rest.</summary>
    /// <param name="at">The rest.</param>
    /// <param name="type">The type; a copy must be missing.</param>
    /// <param name="turned">Whether it lies turned.</param>
    /// <param name="upright">Direction of the cut that comes first.</param>
    /// <param name="rests">The rests this leaves: beside or above the piece's strip, within the strip, beside the piece in a widened strip; none where there is none.</param>
    internal void Put(int at, int type, bool turned, bool upright, Span<int> rests)
    {
        CutType t = job.Types[type];
        (int w, int h) = turned ? (t.H, t.W) : (t.W, t.H);
        int parent = nodes[at].Parent;
        rests.Fill(CutNode.None);
        Unlist(at);
        int holder = at, rest = 0;
        bool inside = false;
        if (Narrow(at, upright, upright ? w : h))
        {
            // A strip of the least width there may be: the piece is trimmed out of it, over its full length even where nothing lies above.
            int least = job.Problem.Rules.LeastStrip;
            if (least < (upright ? nodes[at].W : nodes[at].H))
            {
                holder = StripOf(holder, upright, least, out rests[rest]);
                List(rests[rest++]);
            }

            upright = !upright;
            inside = (upright ? w : h) == (upright ? nodes[holder].W : nodes[holder].H);
            if (inside)
                holder = Inside(holder, upright);
        }

        // A strip as wide as the piece; it is cut once more, or is the piece.
        for (int cut = 0; cut < 2; cut++, upright = !upright)
        {
            int size = upright ? w : h;
            if (size == (upright ? nodes[holder].W : nodes[holder].H))
                continue;
            holder = StripOf(holder, upright, size, out rests[rest]);
            if (!inside)
                List(rests[rest++]);
        }

        Settle(holder, type, turned);
        if (parent >= 0 && nodes[at].Kind != CutKind.Bare && nodes[parent].Rest == at)
            nodes[parent].Rest = CutNode.None;
    }

    // A part with one child as large as itself: what is cut from that is no neighbour of the part.
    private int Inside(int at, bool upright)
    {
        int inner = Take();
        nodes[inner] = Child(at, at, (short)(nodes[at].Stage + 1), upright, upright ? nodes[at].W : nodes[at].H);
        ref CutNode node = ref nodes[at];
        (node.Kind, node.Upright, node.First, node.Rest) = (CutKind.Part, upright, CutNode.None, CutNode.None);
        Hook(inner, at);
        Enlive(at);
        return inner;
    }

    // A bare node becomes a piece.
    private void Settle(int at, int type, bool turned)
    {
        ref CutNode node = ref nodes[at];
        (node.Kind, node.Type, node.Turned) = (CutKind.Piece, type, turned);
        Enlive(at);
        CutType t = job.Types[type];
        sheets[node.Sheet].Pieces++;
        sheets[node.Sheet].Area += t.Area;
        left[type]--;
        MissingArea -= t.Area;
        MissingCount--;
        if (t.Group >= 0)
            groups.Move(node.Sheet, job.GroupOf[type], 1);
    }

    private bool Narrow(int at, bool upright, int size)
    {
        int room = upright ? nodes[at].W : nodes[at].H;
        return size < room && size < job.Problem.Rules.LeastStrip && StageOf(at, upright) == 1;
    }

    // How many stages of cuts free a strip that is cut from a node in a direction.
    private int StageOf(int at, bool upright)
    {
        int parent = nodes[at].Parent;
        bool same = parent >= 0 ? nodes[parent].Upright == upright : nodes[at].Stage > 0 && nodes[at].Upright == upright;
        return same ? nodes[at].Stage : nodes[at].Stage + 1;
    }

    // Parts a bare node in two: a strip, and the rest beside it. The strip is a node of its own; the rest is one too, or what is left of the node.
    private int StripOf(int at, bool upright, int size, out int rest)
    {
        int parent = nodes[at].Parent;
        if (parent >= 0 && nodes[parent].Upright == upright)
        {
            // The parent is cut in this direction already: one child more.
            int strip = Take();
            nodes[strip] = Child(at, parent, nodes[at].Stage, upright, size);
            Hook(strip, parent);
            if (upright)
                nodes[at].W -= size;
            else
                nodes[at].H -= size;
            rest = at;
            return strip;
        }

        short stage = (short)StageOf(at, upright);
        int one = Take(), two = Take();
        int whole = upright ? nodes[at].W : nodes[at].H;
        nodes[one] = Child(at, at, stage, upright, size);
        nodes[two] = Child(at, at, stage, upright, whole - size);
        ref CutNode node = ref nodes[at];
        (node.Kind, node.Upright, node.First, node.Rest) = (CutKind.Part, upright, CutNode.None, two);
        Hook(two, at);
        Hook(one, at);
        Enlive(at);
        rest = two;
        return one;
    }

    private CutNode Child(int of, int parent, short stage, bool upright, int size) => new()
    {
        Parent = parent,
        First = CutNode.None,
        Next = CutNode.None,
        Prev = CutNode.None,
        Rest = CutNode.None,
        W = upright ? size : nodes[of].W,
        H = upright ? nodes[of].H : size,
        Sheet = nodes[of].Sheet,
        Slot = -1,
        Kind = CutKind.Bare,
        Stage = stage,
    };

    private bool OnlyChild(int node, int parent)
    {
        // The children are this one and perhaps the bare one.
        int first = nodes[parent].First, rest = nodes[parent].Rest;
        int next = nodes[first].Next;
        return next == CutNode.None ? first == node : nodes[next].Next == CutNode.None && ((first == node && next == rest) || (next == node && first == rest));
    }

    // Empties a node in place: what was below it is gone, itself bare but not listed.
    private void Strip(int node)
    {
        for (int child = nodes[node].First; child != CutNode.None;)
        {
            int next = nodes[child].Next;
            DropTree(child);
            child = next;
        }

        Unlive(node);
        ref CutNode n = ref nodes[node];
        n.First = n.Rest = CutNode.None;
        if (n.Parent >= 0)
            n.Upright = false;
        else
            RootAgain(node);
    }

    private void RootAgain(int node)
    {
        ref CutNode n = ref nodes[node];
        CutSheet sheet = sheets[n.Sheet];
        n.Upright = job.Parts[sheet.Stock][sheet.Way][n.Prev].Upright;
        List(node);
    }

    private void DropTree(int node)
    {
        for (int child = nodes[node].First; child != CutNode.None;)
        {
            int next = nodes[child].Next;
            DropTree(child);
            child = next;
        }

        if (nodes[node].Kind == CutKind.Bare)
            Unlist(node);
        else
            Unlive(node);
        Give(node);
    }

    private void Hook(int child, int parent)
    {
        int first = nodes[parent].First;
        nodes[child].Next = first;
        nodes[child].Prev = CutNode.None;
        if (first >= 0)
            nodes[first].Prev = child;
        nodes[parent].First = child;
    }

    private void Unhook(int child)
    {
        (int prev, int next) = (nodes[child].Prev, nodes[child].Next);
        if (prev >= 0)
            nodes[prev].Next = next;
        else
            nodes[nodes[child].Parent].First = next;
        if (next >= 0)
            nodes[next].Prev = prev;
    }

    private void List(int node)
    {
        ref CutNode n = ref nodes[node];
        if (n.W < job.LeastW || n.H < job.LeastH || n.Stage > job.MostStages || IsSliver(n))
            return;

        Room(ref bare, bareCount + 1);
        n.Slot = bareCount;
        n.Worth = CutFill.Worth(n.Area);
        bare[bareCount++] = node;
    }

    // A rest of the first stage too narrow to be a strip.
    private bool IsSliver(in CutNode n) =>
        n.Parent >= 0 && n.Stage == 1 && (nodes[n.Parent].Upright ? n.W : n.H) < job.Problem.Rules.LeastStrip;

    private void Unlist(int node)
    {
        int slot = nodes[node].Slot;
        if (slot < 0)
            return;

        int last = bare[--bareCount];
        bare[slot] = last;
        nodes[last].Slot = slot;
        nodes[node].Slot = -1;
    }

    private void Enlive(int node)
    {
        Room(ref live, liveCount + 1);
        nodes[node].Slot = liveCount;
        live[liveCount++] = node;
    }

    private void Unlive(int node)
    {
        ref CutNode n = ref nodes[node];
        int last = live[--liveCount];
        live[n.Slot] = last;
        nodes[last].Slot = n.Slot;
        n.Slot = -1;
        if (n.Kind == CutKind.Piece)
        {
            long area = job.Types[n.Type].Area;
            sheets[n.Sheet].Pieces--;
            sheets[n.Sheet].Area -= area;
            left[n.Type]++;
            MissingArea += area;
            MissingCount++;
            if (job.Types[n.Type].Group >= 0)
                groups.Move(n.Sheet, job.GroupOf[n.Type], -1);
        }

        n.Kind = CutKind.Bare;
    }

    private int Take()
    {
        if (spare >= 0)
        {
            int node = spare;
            spare = nodes[node].Next;
            return node;
        }

        Room(ref nodes, used + 1);
        return used++;
    }

    private void Give(int node)
    {
        (nodes[node].Next, nodes[node].W) = (spare, 0);
        spare = node;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Room<T>(ref T[] array, int count)
    {
        if (array.Length < count)
            Array.Resize(ref array, Math.Max(count, array.Length * 2));
    }
}
