using Laydown.Plan.Calendar;

namespace Laydown.Plan.Upkeep;

/// <summary>Finds the cheapest short runs that leave no gap of a stop longer than the limit.</summary>
/// <remarks>
/// A run within a shift costs less than one somebody comes for. From each run on, a later next run of the same kind is never worse, so only the last possible start in each shift and the last possible start of all are tried:
/// a shortest path, exact.
/// </remarks>
public sealed class ShortRunTimes
{
    private readonly IdleSpan idle;
    private readonly TimeSpan limit;
    private readonly TimeSpan run;
    private readonly IReadOnlyList<OpenSpan> open;
    private readonly (long InShift, long Outside) cents;
    private readonly Dictionary<DateTimeOffset, (long Cents, ShortRun? Next)> known = [];

    private ShortRunTimes(IdleSpan idle, double limitHours, double runMinutes, IReadOnlyList<OpenSpan> open, (long, long) cents) =>
        (this.idle, limit, run, this.open, this.cents) = (idle, TimeSpan.FromHours(limitHours), TimeSpan.FromMinutes(runMinutes), open, cents);

    /// <summary>The short runs, earliest first; none where the stop is within the limit.</summary>
    /// <param name="idle">The stop.</param>
    /// <param name="limitHours">Longest gap, h, longer than a short run.</param>
    /// <param name="runMinutes">A short run, minutes, over 0.</param>
    /// <param name="open">Shifts about the stop.</param>
    /// <param name="cents">What a short run costs within a shift, and outside.</param>
    public static IReadOnlyList<ShortRun> Cheapest(IdleSpan idle, double limitHours, double runMinutes, IReadOnlyList<OpenSpan> open, (long InShift, long Outside) cents)
    {
        ShortRunTimes times = new(idle, limitHours, runMinutes, open, cents);
        List<ShortRun> runs = [];
        for (ShortRun? next = times.From(idle.Start).Next; next is not null; next = times.From(next.End).Next)
            runs.Add(next);
        return runs;
    }

    // Walked from the end: the way from a later instant is known before it is asked for from an earlier one.
    private (long Cents, ShortRun? Next) From(DateTimeOffset last)
    {
        Stack<DateTimeOffset> asked = new([last]);
        while (asked.Count > 0)
        {
            DateTimeOffset at = asked.Peek();
            if (known.ContainsKey(at) || idle.End - at <= limit)
            {
                known.TryAdd(at, (0, null));
                asked.Pop();
                continue;
            }

            List<ShortRun> next = [.. Next(at)];
            List<DateTimeOffset> unknown = [.. next.Select(n => n.End).Where(e => !known.ContainsKey(e))];
            if (unknown.Count > 0)
            {
                unknown.ForEach(asked.Push);
                continue;
            }

            known[at] = next.Select(n => (Cents: (n.InShift ? cents.InShift : cents.Outside) + known[n.End].Cents, Next: (ShortRun?)n)).MinBy(n => n.Cents);
            asked.Pop();
        }

        return known[last];
    }

    private IEnumerable<ShortRun> Next(DateTimeOffset last)
    {
        DateTimeOffset latest = Earlier(last + limit, idle.End - run);
        foreach (OpenSpan shift in open)
        {
            DateTimeOffset start = Earlier(latest, shift.End - run);
            if (start >= shift.Start && start > last)
                yield return new(start, start + run, true);
        }

        if (!open.Any(s => s.Start <= latest && latest + run <= s.End))
            yield return new(latest, latest + run, false);
    }

    private static DateTimeOffset Earlier(DateTimeOffset one, DateTimeOffset other) => one < other ? one : other;
}
