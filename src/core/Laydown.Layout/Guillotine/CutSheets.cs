namespace Laydown.Layout.Guillotine;

/// <summary>Open sheets of a forest, and how many are still there of each stock.</summary>
/// <param name="stocks">Sheets there are at first, by stock.</param>
internal sealed class CutSheets(IEnumerable<int> stocks)
{
    private readonly int[] free = [.. stocks];
    private CutSheet[] sheets = new CutSheet[16];
    private int[] open = new int[16];
    private int used, openCount, firstFree;

    /// <summary>Sheets still there, by stock.</summary>
    internal ReadOnlySpan<int> Free => free;

    /// <summary>Slots of the open sheets.</summary>
    internal ReadOnlySpan<int> Open => open.AsSpan(0, openCount);

    internal ref CutSheet this[int slot] => ref sheets[slot];

    internal void CopyFrom(CutSheets other)
    {
        if (sheets.Length < other.used)
            (sheets, open) = (new CutSheet[other.sheets.Length], new int[other.sheets.Length]);
        Array.Copy(other.sheets, sheets, other.used);
        Array.Copy(other.open, open, other.openCount);
        Array.Copy(other.free, free, free.Length);
        (used, openCount, firstFree) = (other.used, other.openCount, other.firstFree);
    }

    /// <summary>The first slot not in use; it is not taken yet.</summary>
    internal int NextSlot()
    {
        while (firstFree < used && sheets[firstFree].Stock >= 0)
            firstFree++;
        if (firstFree < used)
            return firstFree;

        if (used == sheets.Length)
        {
            Array.Resize(ref sheets, 2 * used);
            Array.Resize(ref open, 2 * used);
        }

        sheets[used++] = new() { Stock = -1 };
        return firstFree;
    }

    internal void Add(int slot, int stock, int way, int root)
    {
        sheets[slot] = new() { Stock = stock, Way = way, Root = root, Place = openCount };
        open[openCount++] = slot;
        free[stock]--;
    }

    internal void Remove(int slot)
    {
        ref CutSheet sheet = ref sheets[slot];
        free[sheet.Stock]++;
        int last = open[--openCount];
        open[sheet.Place] = last;
        sheets[last].Place = sheet.Place;
        sheet = new() { Stock = -1 };
        firstFree = Math.Min(firstFree, slot);
    }
}
