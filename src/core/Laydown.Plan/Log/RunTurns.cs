using Laydown.Plan.Calendar;

namespace Laydown.Plan.Log;

/// <summary>Turns of runs at presses: where they lie over each other, and how much of the open time they fill.</summary>
public static class RunTurns
{
    /// <summary>Most overlaps that are told: the first ones.</summary>
    public const int MostOverlaps = 50;

    /// <summary>Turns of runs, by run and start.</summary>
    /// <param name="entries">Entries that count, those of one run in the order they came; others than starts and stops are passed over.</param>
    public static IReadOnlyList<RunTurn> Of(IEnumerable<LogEntry> entries)
    {
        List<RunTurn> turns = [];
        foreach (IGrouping<string?, LogEntry> run in entries.Where(e => e.Kind is LogKind.Start or LogKind.Stop).GroupBy(e => e.RunId, StringComparer.Ordinal))
        {
            LogEntry? start = null;
            foreach (LogEntry entry in run)
            {
                if (entry.Kind == LogKind.Stop && start is not null)
                    turns.Add(new(run.Key ?? "", start.PressId, start.At, entry.At, start.Number, entry.Number));
                start = entry.Kind == LogKind.Start ? entry : null;
            }

            if (start is not null)
                turns.Add(new(run.Key ?? "", start.PressId, start.At, null, start.Number));
        }

        return turns;
    }

    /// <summary>Times in which one press printed two runs at once, earliest first; turns that are not stopped are passed over.</summary>
    public static IReadOnlyList<RunOverlap> Overlaps(IEnumerable<RunTurn> turns)
    {
        List<RunOverlap> overlaps = [];
        foreach (IGrouping<string, RunTurn> press in turns.Where(t => t.Stop is not null).GroupBy(t => t.PressId, StringComparer.Ordinal))
        {
            List<RunTurn> on = [];
            foreach (RunTurn turn in press.OrderBy(t => t.Start).ThenBy(t => t.RunId, StringComparer.Ordinal))
            {
                on.RemoveAll(t => t.Stop <= turn.Start);
                overlaps.AddRange(on.Where(t => !string.Equals(t.RunId, turn.RunId, StringComparison.Ordinal))
                    .Select(t => new RunOverlap(press.Key, t.RunId, turn.RunId, turn.Start, t.Stop < turn.Stop ? t.Stop!.Value : turn.Stop!.Value)));
                on.Add(turn);
            }
        }

        return [.. overlaps.OrderBy(o => o.From).ThenBy(o => o.RunId, StringComparer.Ordinal).Take(MostOverlaps)];
    }

    /// <summary>How much of the open time of one press its turns fill.</summary>
    /// <param name="turns">Turns at the press; those that are not stopped are passed over.</param>
    /// <param name="open">When it was to be worked.</param>
    /// <param name="from">Start of the time looked at.</param>
    /// <param name="to">Its end.</param>
    public static PressHours Hours(IEnumerable<RunTurn> turns, IEnumerable<OpenSpan> open, DateTimeOffset from, DateTimeOffset to)
    {
        List<(DateTimeOffset Start, DateTimeOffset End)> told =
            [.. turns.Where(t => t.Stop is not null).Select(t => Within((t.Start, t.Stop!.Value), from, to)).Where(t => t.End > t.Start)];
        List<(DateTimeOffset Start, DateTimeOffset End)> run = Union(told), worked = Union(open.Select(o => Within((o.Start, o.End), from, to)).Where(o => o.End > o.Start));
        double runMinutes = Minutes(run), inside = Minutes(Both(run, worked));
        return new(Minutes(worked), inside, runMinutes - inside, Minutes(told) - runMinutes);
    }

    private static (DateTimeOffset Start, DateTimeOffset End) Within((DateTimeOffset Start, DateTimeOffset End) span, DateTimeOffset from, DateTimeOffset to) =>
        (span.Start > from ? span.Start : from, span.End < to ? span.End : to);

    private static double Minutes(IEnumerable<(DateTimeOffset Start, DateTimeOffset End)> spans) => spans.Sum(s => (s.End - s.Start).TotalMinutes);

    // Spans that touch or lie over each other become one.
    private static List<(DateTimeOffset Start, DateTimeOffset End)> Union(IEnumerable<(DateTimeOffset Start, DateTimeOffset End)> spans)
    {
        List<(DateTimeOffset Start, DateTimeOffset End)> union = [];
        foreach ((DateTimeOffset start, DateTimeOffset end) in spans.OrderBy(s => s.Start))
        {
            if (union.Count > 0 && start <= union[^1].End)
                union[^1] = (union[^1].Start, end > union[^1].End ? end : union[^1].End);
            else
                union.Add((start, end));
        }

        return union;
    }

    // What lies in both of two unions.
    private static IEnumerable<(DateTimeOffset Start, DateTimeOffset End)> Both(
        List<(DateTimeOffset Start, DateTimeOffset End)> one, List<(DateTimeOffset Start, DateTimeOffset End)> other)
    {
        for (int i = 0, j = 0; i < one.Count && j < other.Count;)
        {
            (DateTimeOffset start, DateTimeOffset end) = Within(one[i], other[j].Start, other[j].End);
            if (end > start)
                yield return (start, end);
            if (one[i].End < other[j].End)
                i++;
            else
                j++;
        }
    }
}
