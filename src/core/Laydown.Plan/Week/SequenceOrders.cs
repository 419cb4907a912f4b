namespace Laydown.Plan.Week;

/// <summary>A few good orders, unlike each other, from which new ones are crossed.</summary>
/// <param name="count">How many jobs an order has.</param>
/// <param name="room">How many orders are kept; 2 or more.</param>
internal sealed class SequenceOrders(int count, int room)
{
    /// <summary>Orders with fewer other neighbours than this are alike: of two such the better is kept.</summary>
    private const int FewOthers = 6;

    private readonly List<(int[] Order, long Cost)> kept = [];
    private readonly int[] after = new int[count + 1];

    /// <summary>Whether there is no more room: a new order then drives out the worst.</summary>
    internal bool IsFull => kept.Count == room;

    /// <summary>Forgets all.</summary>
    internal void Clear() => kept.Clear();

    /// <summary>Keeps an order, unless one like it, one of the same cost, or only better ones are kept where there is no more room.</summary>
    /// <returns>Whether it is kept.</returns>
    internal bool Keep(ReadOnlySpan<int> order, long cost)
    {
        if (kept.Exists(k => k.Cost == cost))
            return false;
        int worst = IsFull ? kept.IndexOf(kept.MaxBy(k => k.Cost)) : -1, alike = Alike(order);
        if (worst >= 0 && cost > kept[worst].Cost)
            return false;
        if (alike >= 0 && cost > kept[alike].Cost)
            return false;

        int gives = alike >= 0 ? alike : worst;
        if (gives >= 0)
            kept.RemoveAt(gives);
        kept.Add((order.ToArray(), cost));
        return true;
    }

    /// <summary>Crosses two kept orders drawn by chance: a run of neighbours stays in its places from one, the others come in the order of the other [Xu2014].</summary>
    internal int[] Cross(WeekChance chance)
    {
        int one = chance.Below(kept.Count), other = chance.Below(kept.Count - 1);
        (int[] a, int[] b) = (kept[one].Order, kept[other < one ? other : other + 1].Order);
        int from = chance.Below(count), to = Math.Min(count, from + 1 + (count / 4) + chance.Below(Math.Max(1, count / 2)));
        bool[] stays = new bool[count];
        for (int at = from; at < to; at++)
            stays[a[at]] = true;

        int[] child = [.. a];
        int place = 0;
        foreach (int job in b)
        {
            if (stays[job])
                continue;
            if (place == from)
                place = to;
            child[place++] = job;
        }

        return child;
    }

    // The kept order most like another, if it is much like it.
    private int Alike(ReadOnlySpan<int> order)
    {
        (int alike, int most) = (-1, count - FewOthers);
        for (int k = 0; k < kept.Count; k++)
            if (Shared(kept[k].Order, order) is var shared && shared > most)
                (alike, most) = (k, shared);
        return alike;
    }

    // How many jobs follow the same job in both; the first one follows the start.
    private int Shared(int[] one, ReadOnlySpan<int> other)
    {
        int before = count, shared = 0;
        foreach (int job in one)
            (after[before], before) = (job, job);
        after[before] = -1;
        before = count;
        foreach (int job in other)
        {
            shared += after[before] == job ? 1 : 0;
            before = job;
        }

        return shared;
    }
}
