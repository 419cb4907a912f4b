using Laydown.Measures;
using Laydown.Plan.Log;

namespace Laydown.Shop.Log;

/// <summary>The log of a shop: it only grows. Every method is one transaction.</summary>
public interface ILogStore
{
    /// <summary>Judges an entry by what the log holds and appends what the judge gives, with its number; nobody else writes in between.</summary>
    /// <param name="entry">The entry to be judged.</param>
    /// <param name="judge">Gives the entry as it is to be kept, or why it is refused.</param>
    /// <param name="cancellation">Stops; then nothing is kept.</param>
    /// <returns>The entry as kept, or the faults.</returns>
    Task<Reading<LogEntry>> AppendAsync(LogEntry entry, Func<LogBefore, Reading<LogEntry>> judge, CancellationToken cancellation);

    /// <summary>One page of entries, latest first.</summary>
    Task<LogPage> PageAsync(LogWish wish, CancellationToken cancellation);

    /// <summary>All entries of a run in the order they came, struck ones too.</summary>
    Task<IReadOnlyList<LogEntry>> OfRunAsync(string runId, CancellationToken cancellation);

    /// <summary>The last entries of one kind that count, oldest first.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="span">Press and time.</param>
    /// <param name="most">At most so many, the last ones.</param>
    /// <param name="cancellation">Stops.</param>
    Task<IReadOnlyList<LogEntry>> LastAsync(LogKind kind, LogSpan span, int most, CancellationToken cancellation);

    /// <summary>What the last runs that were done took, oldest first.</summary>
    /// <param name="span">Press and time.</param>
    /// <param name="most">At most so many, the last ones.</param>
    /// <param name="cancellation">Stops.</param>
    Task<IReadOnlyList<RunActual>> ActualsAsync(LogSpan span, int most, CancellationToken cancellation);

    /// <summary>Turns of runs at their presses, from starts and stops that count.</summary>
    /// <param name="runIds">The runs.</param>
    /// <param name="cancellation">Stops.</param>
    Task<IReadOnlyList<RunTurn>> TurnsAsync(IReadOnlyList<string> runIds, CancellationToken cancellation);
}
