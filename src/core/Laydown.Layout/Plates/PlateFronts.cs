namespace Laydown.Layout.Plates;

/// <summary>States kept so far, by the set of panes they hold: tells whether one of them has cut no further anywhere.</summary>
internal sealed class PlateFronts
{
    private int[] first = [];
    private int[] next = [];

    internal void Clear(int width)
    {
        int room = 16;
        while (room < 2 * width)
            room *= 2;
        if (first.Length < room)
            first = new int[room];
        if (next.Length < width)
            next = new int[width];
        Array.Fill(first, -1);
    }

    /// <summary>Enters a state under its place; false where one entered before outdoes it.</summary>
    internal bool Add(in PlateState state, PlateState[] kept, int place)
    {
        int slot = (int)((state.Mark ^ (state.Mark >> 32)) & (ulong)(first.Length - 1));
        for (int i = first[slot]; i >= 0; i = next[i])
            if (kept[i].Mark == state.Mark && Within(in kept[i], in state))
                return false;
        (next[place], first[slot]) = (first[slot], place);
        return true;
    }

    // What one has cut lies wholly within what the other has cut. Defects are not minded.
    private static bool Within(in PlateState one, in PlateState other)
    {
        if (one.Plate != other.Plate)
            return one.Plate < other.Plate;
        if (one.Right <= other.Left)
            return true;
        if (one.Left > other.Left || one.Right > other.Right)
            return false;
        return one.Top <= other.Bottom || (one.Bottom <= other.Bottom && one.Top <= other.Top && one.Next <= other.Next);
    }
}
