namespace Laydown.Plan.Week;

/// <summary>Numbers of which the least is taken first.</summary>
internal sealed class WeekHeap(int room)
{
    private long[] keys = new long[Math.Max(4, room)];

    internal int Count { get; private set; }

    internal long Least => keys[0];

    internal void Clear() => Count = 0;

    internal void Add(long key)
    {
        if (Count == keys.Length)
            Array.Resize(ref keys, Count * 2);
        int at = Count++;
        for (int up; at > 0 && keys[up = (at - 1) / 2] > key; at = up)
            keys[at] = keys[up];
        keys[at] = key;
    }

    internal long Take()
    {
        long least = keys[0], last = keys[--Count];
        int at = 0;
        for (int down = 1; down < Count; down = (2 * at) + 1)
        {
            if (down + 1 < Count && keys[down + 1] < keys[down])
                down++;
            if (keys[down] >= last)
                break;
            keys[at] = keys[down];
            at = down;
        }

        keys[at] = last;
        return least;
    }
}
