namespace Laydown.Plan.Log;

/// <summary>What the log holds that a new entry must fit to; struck entries left out.</summary>
/// <param name="OfRun">Entries of its run, in the order they came.</param>
/// <param name="LastOnPress">Last start or stop on its press; null for none.</param>
/// <param name="Struck">The entry it strikes; null where it strikes none, or there is no such entry.</param>
public sealed record LogBefore(IReadOnlyList<LogEntry> OfRun, LogEntry? LastOnPress = null, LogEntry? Struck = null)
{
    /// <summary>The last start or stop of the run; null for none.</summary>
    public LogEntry? LastOfRun => OfRun.LastOrDefault(e => e.Kind is LogKind.Start or LogKind.Stop);
}
