namespace Laydown.Layout.FreePacking;

/// <summary>Sheets and the pieces that lie on none of them.</summary>
/// <remarks>A change can be taken back: every sheet is kept as it was before it is first touched.</remarks>
internal sealed class FreeState
{
    private readonly FreeModel model;
    private readonly int[] outKept;
    private FreeBoard[] boards;
    private FreeBoard[] kept;
    private int[] keptOf;
    private int[] touched;
    private int touchedCount;
    private int outKeptCount;
    private int change = 1;

    internal FreeState(FreeModel model, int pieces, int slots)
    {
        this.model = model;
        Out = new int[pieces];
        outKept = new int[pieces];
        boards = [.. Enumerable.Range(0, slots).Select(_ => new FreeBoard())];
        kept = [.. Enumerable.Range(0, slots).Select(_ => new FreeBoard())];
        keptOf = new int[slots];
        touched = new int[slots];
        UsedOf = new int[model.Stocks];
    }

    /// <summary>Slots for sheets; those not in use have stock −1.</summary>
    internal int Slots => boards.Length;

    /// <summary>Pieces without a place, one entry for each copy.</summary>
    internal int[] Out { get; }

    internal int OutCount { get; set; }

    /// <summary>Area of the pieces without a place.</summary>
    internal long OutArea { get; set; }

    /// <summary>Sheets in use by stock.</summary>
    internal int[] UsedOf { get; }

    internal double Cost { get; private set; }

    /// <summary>Slots changed since <see cref="Begin"/>.</summary>
    internal ReadOnlySpan<int> Touched => touched.AsSpan(0, touchedCount);

    internal FreeBoard this[int slot] => boards[slot];

    internal void CopyFrom(FreeState other)
    {
        Grow(other.Slots);
        for (int i = 0; i < Slots; i++)
        {
            if (i < other.Slots)
                boards[i].CopyFrom(other.boards[i]);
            else
                boards[i].Close();
        }

        other.Out.AsSpan(0, other.OutCount).CopyTo(Out);
        (OutCount, OutArea) = (other.OutCount, other.OutArea);
        Count();
        Begin();
    }

    /// <summary>From here on changes can be taken back.</summary>
    internal void Begin()
    {
        touchedCount = 0;
        change++;
        Out.AsSpan(0, OutCount).CopyTo(outKept);
        outKeptCount = OutCount;
    }

    /// <summary>Takes back all changes since <see cref="Begin"/>.</summary>
    internal void Undo()
    {
        for (int i = 0; i < touchedCount; i++)
        {
            int slot = touched[i];
            if (boards[slot].Stock != kept[slot].Stock)
                Swap(boards[slot].Stock, kept[slot].Stock);
            (boards[slot], kept[slot]) = (kept[slot], boards[slot]);
        }

        outKept.AsSpan(0, outKeptCount).CopyTo(Out);
        OutCount = outKeptCount;
        OutArea = 0;
        for (int i = 0; i < OutCount; i++)
            OutArea += model.Area[Out[i]];
    }

    internal void TakeOut(int type)
    {
        Out[OutCount++] = type;
        OutArea += model.Area[type];
    }

    internal void Add(int slot, in Lying spot)
    {
        Touch(slot);
        boards[slot].Add(model, spot);
    }

    /// <summary>Takes marked pieces off a sheet.</summary>
    internal void Remove(int slot, ReadOnlySpan<bool> marked)
    {
        Touch(slot);
        ReadOnlySpan<Lying> spots = boards[slot].Spots;
        for (int i = 0; i < spots.Length; i++)
            if (marked[i])
                TakeOut(spots[i].Type);
        boards[slot].Remove(model, marked);
    }

    /// <summary>Takes a sheet away with all that lies on it.</summary>
    internal void Close(int slot)
    {
        Touch(slot);
        foreach (Lying spot in boards[slot].Spots)
            TakeOut(spot.Type);
        Swap(boards[slot].Stock, -1);
        boards[slot].Close();
    }

    /// <summary>Takes a new sheet; its slot.</summary>
    internal int Open(int stock)
    {
        int slot = 0;
        while (slot < Slots && boards[slot].Stock >= 0)
            slot++;
        if (slot == Slots)
            Grow(Slots + 1 + (Slots / 4));
        Touch(slot);
        Swap(-1, stock);
        boards[slot].Open(model, stock);
        return slot;
    }

    private void Touch(int slot)
    {
        if (keptOf[slot] == change)
            return;

        keptOf[slot] = change;
        kept[slot].CopyFrom(boards[slot]);
        touched[touchedCount++] = slot;
    }

    private void Swap(int from, int to)
    {
        if (from >= 0)
            UsedOf[from]--;
        if (to >= 0)
            UsedOf[to]++;
        Cost = model.CostOf(UsedOf);
    }

    private void Count()
    {
        Array.Clear(UsedOf);
        foreach (FreeBoard b in boards)
            if (b.Stock >= 0)
                UsedOf[b.Stock]++;
        Swap(-1, -1);
    }

    private void Grow(int slots)
    {
        int before = Slots;
        if (slots <= before)
            return;

        Array.Resize(ref boards, slots);
        Array.Resize(ref kept, slots);
        Array.Resize(ref keptOf, slots);
        Array.Resize(ref touched, slots);
        for (int i = before; i < slots; i++)
            (boards[i], kept[i]) = (new(), new());
    }
}
