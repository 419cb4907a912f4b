namespace Laydown.Layout.Guillotine;

/// <summary>Trees of cuts of all open sheets, in one pool of nodes, and the pieces that have no place.</summary>
/// <remarks>
/// Cutting trees whose bare rests are nodes of their own, as in [GardeynWauters2022]; here the order of the children of a part is free, so that its bare
/// children are always one. Copied whole by <see cref="CopyFrom"/>: a few kilobytes for a hundred pieces, cheaper than to undo step by step.
/// </remarks>
internal sealed class CutForest
{
    private readonly CutJob job;
    private readonly CutPool pool = new();
    private readonly CutRests rests;
    private readonly CutLive live;
    private readonly CutSheets sheets;
    private readonly CutPieces pieces;
    private readonly CutStrips strips;

    internal CutForest(CutJob job)
    {
        this.job = job;
        (rests, live, pieces) = (new(pool), new(pool), new(job));
        sheets = new(job.Problem.Stocks.Select(s => s.Copies ?? int.MaxValue));
        strips = new(job, pool, live);
    }

    /// <inheritdoc cref="CutPieces.MissingArea"/>
    internal long MissingArea => pieces.MissingArea;

    /// <inheritdoc cref="CutPieces.MissingCount"/>
    internal int MissingCount => pieces.MissingCount;

    /// <summary>What all open sheets cost.</summary>
    internal long Cost { get; private set; }

    /// <inheritdoc cref="CutPieces.Apart"/>
    internal int Apart => pieces.Apart;

    /// <inheritdoc cref="CutPieces.Left"/>
    internal ReadOnlySpan<int> Left => pieces.Left;

    /// <inheritdoc cref="CutSheets.Free"/>
    internal ReadOnlySpan<int> Free => sheets.Free;

    /// <summary>Bare rests that can take a piece.</summary>
    internal CutRests Bare => rests;

    /// <summary>Pieces and parts: what can be taken out.</summary>
    internal ReadOnlySpan<int> Live => live.Nodes;

    /// <summary>Open sheets.</summary>
    internal ReadOnlySpan<int> Open => sheets.Open;

    /// <summary>All nodes of the pool; those not in use have no width.</summary>
    internal ReadOnlySpan<CutNode> Nodes => pool.All;

    internal ref readonly CutNode this[int node] => ref pool[node];

    internal ref readonly CutSheet SheetAt(int slot) => ref sheets[slot];

    internal void CopyFrom(CutForest other)
    {
        pool.CopyFrom(other.pool);
        rests.CopyFrom(other.rests);
        live.CopyFrom(other.live);
        sheets.CopyFrom(other.sheets);
        pieces.CopyFrom(other.pieces);
        Cost = other.Cost;
    }

    /// <inheritdoc cref="CutPieces.Carries"/>
    internal bool Carries(int slot, int group) => pieces.Carries(slot, group);

    internal bool IsBetterThan(CutForest other) => MissingArea < other.MissingArea || (MissingArea == other.MissingArea && Cost < other.Cost);

    /// <summary>Opens a bare sheet.</summary>
    /// <param name="stock">Its stock; one must be there.</param>
    /// <param name="way">In which way its keep-outs are cut out.</param>
    internal int OpenSheet(int stock, int way)
    {
        int slot = sheets.NextSlot(), first = CutNode.None;
        IReadOnlyList<SheetPart> parts = job.Parts[stock][way];
        for (int i = parts.Count - 1; i >= 0; i--)
        {
            int root = pool.Take();
            pool[root] = new()
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

        sheets.Add(slot, stock, way, first);
        Cost += job.Costs[stock];
        return slot;
    }

    /// <summary>Closes a sheet; its pieces lose their places.</summary>
    internal void CloseSheet(int slot)
    {
        for (int root = sheets[slot].Root; root != CutNode.None;)
        {
            int next = pool[root].Next;
            DropTree(root);
            root = next;
        }

        Cost -= job.Costs[sheets[slot].Stock];
        sheets.Remove(slot);
    }

    /// <summary>Takes a piece or a part out; its room joins the bare rest beside it. An empty sheet is closed.</summary>
    internal void TakeOut(int node)
    {
        // A part whose last child goes is bare as a whole: go up to the topmost such part.
        while (pool[node].Parent is var p and >= 0 && pool.IsOnly(node, p))
            node = p;
        int parent = pool[node].Parent, slot = pool[node].Sheet;
        Strip(node);
        if (parent < 0)
        {
            if (sheets[slot].Pieces == 0)
                CloseSheet(slot);
            return;
        }

        int rest = pool[parent].Rest;
        if (rest < 0)
        {
            pool[parent].Rest = node;
            List(node);
            return;
        }

        // Join with the bare child there is.
        rests.Remove(rest);
        pool.Unhook(node);
        if (pool[parent].Upright)
            pool[rest].W += pool[node].W;
        else
            pool[rest].H += pool[node].H;
        pool.Give(node);
        List(rest);
    }

    /// <summary>Puts a copy of a type into a bare rest.</summary>
    /// <param name="at">The rest.</param>
    /// <param name="type">The type; a copy must be missing.</param>
    /// <param name="turned">Whether it lies turned.</param>
    /// <param name="upright">Direction of the cut that comes first.</param>
    /// <param name="left">The rests this leaves: beside or above the piece's strip, within the strip, beside the piece in a widened strip; none where there is none.</param>
    internal void Put(int at, int type, bool turned, bool upright, Span<int> left)
    {
        CutType t = job.Types[type];
        int parent = pool[at].Parent;
        left.Fill(CutNode.None);
        rests.Remove(at);
        int holder = strips.Cut(at, turned ? t.H : t.W, turned ? t.W : t.H, upright, left);
        foreach (int rest in left)
            if (rest >= 0)
                List(rest);
        ref CutNode node = ref pool[holder];
        (node.Kind, node.Type, node.Turned) = (CutKind.Piece, type, turned);
        live.Add(holder);
        pieces.Move(type, node.Sheet, ref sheets[node.Sheet], 1);
        if (parent >= 0 && pool[at].Kind != CutKind.Bare && pool[parent].Rest == at)
            pool[parent].Rest = CutNode.None;
    }

    // Empties a node in place: what was below it is gone, itself bare but not listed.
    private void Strip(int node)
    {
        for (int child = pool[node].First; child != CutNode.None;)
        {
            int next = pool[child].Next;
            DropTree(child);
            child = next;
        }

        Unlive(node);
        ref CutNode n = ref pool[node];
        n.First = n.Rest = CutNode.None;
        if (n.Parent >= 0)
            n.Upright = false;
        else
            RootAgain(node);
    }

    private void RootAgain(int node)
    {
        ref CutNode n = ref pool[node];
        CutSheet sheet = sheets[n.Sheet];
        n.Upright = job.Parts[sheet.Stock][sheet.Way][n.Prev].Upright;
        List(node);
    }

    private void DropTree(int node)
    {
        for (int child = pool[node].First; child != CutNode.None;)
        {
            int next = pool[child].Next;
            DropTree(child);
            child = next;
        }

        if (pool[node].Kind == CutKind.Bare)
            rests.Remove(node);
        else
            Unlive(node);
        pool.Give(node);
    }

    private void List(int node)
    {
        ref CutNode n = ref pool[node];
        if (n.W < job.LeastW || n.H < job.LeastH || n.Stage > job.MostStages || strips.IsSliver(n))
            return;

        n.Worth = CutFill.Worth(n.Area);
        rests.Add(node);
    }

    private void Unlive(int node)
    {
        live.Remove(node);
        ref CutNode n = ref pool[node];
        if (n.Kind == CutKind.Piece)
            pieces.Move(n.Type, n.Sheet, ref sheets[n.Sheet], -1);
        n.Kind = CutKind.Bare;
    }
}
