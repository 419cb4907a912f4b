using Laydown.Measures;
using Laydown.Plan.Log;

namespace Laydown.Bench.Log;

/// <summary>A simulated year of log, always the same.</summary>
internal static class YearOfLog
{
    /// <summary>At least so many entries: runs with start, thickness, readings, stop, now and then a remake.</summary>
    /// <param name="wanted">Entries wanted.</param>
    /// <param name="pressIds">Presses.</param>
    public static IReadOnlyList<LogEntry> Entries(int wanted, IReadOnlyList<string> pressIds)
    {
        List<LogEntry> entries = [];
        uint state = 20261126;
        DateTimeOffset start = new(2025, 11, 26, 0, 0, 0, TimeSpan.Zero);
        for (int run = 1; entries.Count < wanted; run++)
            entries.AddRange(Run(run, start.AddMinutes(run * 365.0 * 1440 * 10 / wanted), pressIds[run % pressIds.Count], () => state = (state * 1664525) + 1013904223));
        return [.. entries.Take(wanted)];
    }

    private static IEnumerable<LogEntry> Run(int number, DateTimeOffset at, string press, Func<uint> next)
    {
        string id = Invariant($"R-year-{number:00000}"), mode = Invariant($"mode-{number % 4}"), stock = Invariant($"stock-{number % 7}");
        int sheets = 1 + (int)(next() >> 8) % 30, spoiled = (int)(next() >> 8) % 3;
        double estimate = 10 + (2 * sheets), minutes = estimate * (0.85 + (Part(next) * 0.5));
        LogEntry bare = new(0, at, LogKind.Start, id, press, "Ada");
        yield return bare;
        yield return bare with { At = at.AddMinutes(1), Kind = LogKind.Thickness, Thickness = new([.. Enumerable.Range(0, 5).Select(_ => 2.9 + (Part(next) * 0.2))]) };
        for (int i = 0; i < 3; i++)
        {
            yield return bare with { At = at.AddMinutes(2 + i), Kind = LogKind.Register, Register = new(Part(next) - 0.5, Part(next) - 0.5) };
            yield return bare with { At = at.AddMinutes(2.5 + i), Kind = LogKind.Colour, Colour = new("grey", Part(next) * 2, Part(next) - 0.5, Part(next) - 0.5, Part(next) - 0.5) };
        }

        DateTimeOffset end = at.AddMinutes(minutes);
        RunActual actual = new(id, at, end, sheets, spoiled, press, mode, stock, DateOnly.FromDateTime(end.DateTime), minutes, estimate, 30, 28, 3, 2.2);
        yield return bare with { At = end, Kind = LogKind.Stop, Stop = new(sheets, spoiled, sheets + spoiled, Done: true, 30), Actual = actual };
        if (spoiled > 0)
        {
            RemakeNote remake = new((RemakeCause)((int)(next() >> 8) % 23), RemakeFound.Press, null, spoiled, 3, 20, 5, RemakePayer.Shop, new Money(500 + (next() % 4000)), "simulated");
            yield return bare with { At = end.AddMinutes(1), Kind = LogKind.Remake, Remake = remake };
        }
    }

    private static double Part(Func<uint> next) => (next() >> 8) / (double)(1 << 24);
}
