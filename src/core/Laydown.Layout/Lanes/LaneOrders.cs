namespace Laydown.Layout.Lanes;

/// <summary>How many lanes of each type lie already, as one number, and which may come next.</summary>
internal sealed class LaneOrders
{
    private readonly IReadOnlyList<LaneType> types;
    private readonly bool anyOrder;
    private readonly int mostLanes;
    private readonly int[] place, after;

    internal LaneOrders(IReadOnlyList<LaneType> types, bool anyOrder, int mostLanes)
    {
        (this.types, this.anyOrder, this.mostLanes) = (types, anyOrder, mostLanes);
        place = new int[types.Count];
        States = 1;
        for (int i = 0; i < types.Count; i++)
        {
            place[i] = States;
            States *= types[i].Most + 1;
        }

        after = [.. Enumerable.Range(0, States * types.Count).Select(i => Next(i / types.Count, i % types.Count))];
    }

    /// <summary>How many states there are; 0 is the empty belt.</summary>
    internal int States { get; }

    /// <summary>Whether every type has its fewest lanes.</summary>
    internal bool IsWhole(int state)
    {
        for (int i = 0; i < types.Count; i++)
            if (Used(state, i) < types[i].Least)
                return false;
        return true;
    }

    /// <summary>The state once a sheet of a type lies next, or −1 where it may not.</summary>
    internal int After(int state, int type) => after[(state * types.Count) + type];

    private int Next(int state, int type)
    {
        int all = 0;
        for (int i = 0; i < types.Count; i++)
        {
            int used = Used(state, i);
            all += used;
            if (!anyOrder && ((i < type && used < types[i].Least) || (i > type && used > 0)))
                return -1;
        }

        return all < mostLanes && Used(state, type) < types[type].Most ? state + place[type] : -1;
    }

    private int Used(int state, int type) => state / place[type] % (types[type].Most + 1);
}
