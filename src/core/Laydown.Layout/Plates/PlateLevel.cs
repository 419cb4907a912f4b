namespace Laydown.Layout.Plates;

/// <summary>States with equally many panes cut: takes many, keeps the best.</summary>
/// <remarks>The order is that of the guide, then of arrival: the same on every machine.</remarks>
internal sealed class PlateLevel
{
    private const int Spare = 8;

    private PlateState[] states = [];
    private PlateState[] spare = [];
    private ulong[] keys = [];
    private int[] order = [];
    private int count;
    private uint arrivals;
    private int keep;
    private int room;
    private ulong limit;

    /// <summary>Empties the level.</summary>
    /// <param name="width">How many states a beam may keep.</param>
    internal void Clear(int width)
    {
        keep = 2 * width;
        room = Math.Max(64, Spare * width);
        (count, arrivals, limit) = (0, 0, ulong.MaxValue);
    }

    /// <summary>How many states are held.</summary>
    internal int Count => count;

    /// <summary>A state, best first once sorted.</summary>
    internal ref readonly PlateState this[int at] => ref states[order[at]];

    /// <summary>Takes a state; the lower the guide, the better.</summary>
    internal void Add(in PlateState state, float guide)
    {
        ulong key = ((ulong)BitConverter.SingleToUInt32Bits(guide) << 32) | arrivals++;
        if (key >= limit)
            return;
        if (count == room)
        {
            Cull();
            if (key >= limit)
                return;
        }

        if (count == states.Length)
            Grow();
        keys[count] = key;
        states[count++] = state;
    }

    private void Cull()
    {
        Sort();
        if (spare.Length < states.Length)
            spare = new PlateState[states.Length];
        for (int i = 0; i < keep; i++)
            spare[i] = states[order[i]];
        (states, spare) = (spare, states);
        (count, limit) = (keep, keys[keep - 1]);
    }

    private void Grow()
    {
        int size = Math.Min(room, Math.Max(64, 2 * states.Length));
        Array.Resize(ref states, size);
        Array.Resize(ref keys, size);
        Array.Resize(ref order, size);
    }

    /// <summary>Whether states were thrown away.</summary>
    internal bool Culled => limit != ulong.MaxValue;

    /// <summary>Sorts by guide.</summary>
    internal void Sort()
    {
        for (int i = 0; i < count; i++)
            order[i] = i;
        Array.Sort(keys, order, 0, count);
    }
}
