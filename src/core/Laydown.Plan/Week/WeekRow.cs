namespace Laydown.Plan.Week;

/// <summary>The order of runs on one press, with what is known between any two: what a change costs is reckoned from where it begins to where all is as it was.</summary>
internal sealed class WeekRow
{
    private readonly WeekModel model;
    private readonly int press;
    private readonly WeekCareWalk? care;
    private int[] order = [];
    private int[] free = [0];
    private long[] cost = [0];
    private int[] scratch = [];

    internal WeekRow(WeekModel model, int press, ReadOnlySpan<int> first)
    {
        (this.model, this.press, care) = (model, press, model.CareOf(press));
        care?.Begin();
        care?.Keep(0);
        Put(0, first, 0);
    }

    /// <summary>How many runs it has.</summary>
    internal int Count { get; private set; }

    /// <summary>The runs, first to last.</summary>
    internal ReadOnlySpan<int> Order => order.AsSpan(0, Count);

    /// <summary>What it costs.</summary>
    internal long Cost => cost[Count];

    /// <summary>What the runs before a place cost.</summary>
    internal long CostBefore(int place) => cost[place];

    /// <summary>When the press is free after the runs before a place.</summary>
    internal int FreeAt(int place) => free[place];

    /// <summary>Cost with other runs between two places; some number over <paramref name="most"/> where it is surely over that.</summary>
    /// <remarks>
    /// A press that is free later is never better for the runs after, so that what they cost now is a bound. Where care of the press is planned another moment of
    /// it may be better all the same: such a change is missed.
    /// </remarks>
    /// <param name="from">Runs before this place stay.</param>
    /// <param name="then">What comes next.</param>
    /// <param name="resume">And then the runs from this place on.</param>
    /// <param name="most">What is of interest.</param>
    internal long With(int from, ReadOnlySpan<int> then, int resume, long most)
    {
        care?.Back(from);
        (int time, long sum, int before) = (free[from], cost[from], Before(from));
        foreach (int run in then)
        {
            (time, long more) = model.Lay(press, before, run, time);
            sum += more;
            before = run;
            if (sum > most)
                return sum;
        }

        for (int at = resume; at < Count; at++)
        {
            if (time >= free[at] && before == Before(at))
            {
                long rest = sum + cost[Count] - cost[at];
                if (rest > most || (time == free[at] && care?.IsAs(at) != false))
                    return rest;
            }

            (time, long more) = model.Lay(press, before, order[at], time);
            sum += more;
            before = order[at];
            if (sum > most)
                return sum;
        }

        return sum;
    }

    /// <summary>The first place from <paramref name="least"/> on at which the press is free at a time or later.</summary>
    internal int PlaceAt(int time, int least)
    {
        int low = least, high = Count;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = free[middle] < time ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    /// <summary>The order as a change would make it.</summary>
    internal int[] Changed(in WeekPart part) => [.. Order[..part.From], .. part.Then, .. Order[part.Resume..]];

    /// <summary>Puts other runs between two places.</summary>
    internal void Put(int from, ReadOnlySpan<int> then, int resume)
    {
        int count = from + then.Length + Count - resume;
        if (order.Length < count)
        {
            Array.Resize(ref order, 2 * count);
            Array.Resize(ref free, (2 * count) + 1);
            Array.Resize(ref cost, (2 * count) + 1);
            scratch = new int[2 * count];
        }

        then.CopyTo(scratch);
        Array.Copy(order, resume, order, from + then.Length, Count - resume);
        scratch.AsSpan(0, then.Length).CopyTo(order.AsSpan(from));
        Count = count;
        care?.Back(from);
        for (int at = from; at < count; at++)
        {
            (free[at + 1], long more) = model.Lay(press, Before(at), order[at], free[at]);
            cost[at + 1] = cost[at] + more;
            care?.Keep(at + 1);
        }
    }

    private int Before(int place) => place == 0 ? model.Runs.Length + press : order[place - 1];
}
