namespace Laydown.Plan.Log;

/// <summary>What a run took, from the entries of the log.</summary>
public static class RunActuals
{
    /// <summary>What a run took, with the stop that ends it.</summary>
    /// <param name="run">The run.</param>
    /// <param name="entries">Its entries that count, in the order they came; the last of them is the stop that ends it.</param>
    /// <exception cref="ArgumentException">The last entry does not end the run, or starts and stops do not follow each other.</exception>
    public static RunActual Of(LoggedRun run, IReadOnlyList<LogEntry> entries)
    {
        List<LogEntry> turns = [.. entries.Where(e => e.Kind is LogKind.Start or LogKind.Stop)];
        if (turns is not [.., { Stop.Done: true }] || turns.Where((e, i) => e.Kind != (i % 2 == 0 ? LogKind.Start : LogKind.Stop)).Any())
            throw new ArgumentException(Invariant($"Run {run.RunId}: wanted starts and stops by turns, the last one done."), nameof(entries));

        List<RunStop> stops = [.. turns.Select(e => e.Stop).OfType<RunStop>()];
        int good = stops.Sum(s => s.Good), spoiled = stops.Sum(s => s.Spoiled);
        double minutes = turns.Chunk(2).Sum(pair => (pair[1].At - pair[0].At).TotalMinutes);

        // More or fewer sheets than planned take their share of the time and the ink; set-up is there once.
        double share = (double)(good + spoiled) / run.Sheets;
        return new(
            run.RunId, turns[0].At, turns[^1].At, good, spoiled, run.PressId, run.ModeId, run.StockId, run.Due, minutes,
            run.SetUpMinutes + (run.SheetsMinutes * share), stops.TrueForAll(s => s.InkMl is not null) ? stops.Sum(s => s.InkMl) : null,
            run.SetUpInkMl + (run.SheetsInkMl * share), run.SheetM2, run.PieceM2);
    }
}
