namespace Laydown.Plan.Log;

/// <summary>What the log holds that a new entry must fit to; struck entries left out.</summary>
/// <param name="OfRun">Entries of its run, in the order they came.</param>
/// <param name="OthersOnPress">Turns of other runs on its press that are not stopped, or stopped after <see cref="From"/>; of many the first ones. None where the entry starts and stops nothing.</param>
/// <param name="Struck">The entry it strikes; null where it strikes none, or there is no such entry.</param>
public sealed record LogBefore(IReadOnlyList<LogEntry> OfRun, IReadOnlyList<RunTurn> OthersOnPress, LogEntry? Struck = null)
{
    /// <summary>The last start or stop of the run; null for none.</summary>
    public LogEntry? LastOfRun => OfRun.LastOrDefault(e => e.Kind is LogKind.Start or LogKind.Stop);

    /// <summary>Where the time at the press begins that an entry tells of: of a stop with the start before it, of a start with itself; null for other entries.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="ofRun">Entries of its run that count, in the order they came.</param>
    public static DateTimeOffset? From(LogEntry entry, IReadOnlyList<LogEntry> ofRun) => entry.Kind switch
    {
        LogKind.Start => entry.At,
        LogKind.Stop => ofRun.LastOrDefault(e => e.Kind is LogKind.Start or LogKind.Stop) is { Kind: LogKind.Start } start ? start.At : entry.At,
        _ => null,
    };
}
