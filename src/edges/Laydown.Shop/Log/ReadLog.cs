using Laydown.Plan.Log;

namespace Laydown.Shop.Log;

/// <summary>Reads the log, by page or by run.</summary>
/// <param name="log">The log.</param>
public sealed class ReadLog(ILogStore log)
{
    /// <summary>One page, latest first.</summary>
    public Task<LogPage> PageAsync(LogWish wish, CancellationToken cancellation) => log.PageAsync(wish, cancellation);

    /// <summary>All entries of a run in the order they came, struck ones too.</summary>
    public Task<IReadOnlyList<LogEntry>> OfRunAsync(string runId, CancellationToken cancellation) => log.OfRunAsync(runId, cancellation);
}
