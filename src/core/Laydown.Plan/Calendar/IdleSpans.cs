namespace Laydown.Plan.Calendar;

/// <summary>The spans between uses of a press.</summary>
public static class IdleSpans
{
    /// <summary>Every span between <paramref name="from"/> and <paramref name="to"/> that no use covers, earliest first.</summary>
    /// <param name="from">Start of the time looked at, such as the end of the last use.</param>
    /// <param name="to">Its end.</param>
    /// <param name="uses">Start and end of each use, in any order, overlapping or not; what lies outside is cut off.</param>
    /// <exception cref="ArgumentException">A use, or the time looked at, ends before it starts.</exception>
    public static IReadOnlyList<IdleSpan> Between(DateTimeOffset from, DateTimeOffset to, IEnumerable<(DateTimeOffset Start, DateTimeOffset End)> uses)
    {
        if (to < from)
            throw new ArgumentException(Invariant($"Time looked at: found {from:O} to {to:O}; wanted an end that is not before its start."), nameof(to));
        List<IdleSpan> idle = [];
        DateTimeOffset reached = from;
        foreach ((DateTimeOffset start, DateTimeOffset end) in uses.OrderBy(u => u.Start))
        {
            if (end < start)
                throw new ArgumentException(Invariant($"Use: found {start:O} to {end:O}; wanted an end that is not before its start."), nameof(uses));
            if (start > reached && reached < to)
                idle.Add(new(reached, start < to ? start : to));
            reached = end > reached ? end : reached;
        }

        if (reached < to)
            idle.Add(new(reached, to));
        return idle;
    }
}
