using Laydown.Measures;
using Laydown.Plan.Log;
using Laydown.Shop.Log;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>A log that knows runs that were done and nothing else.</summary>
internal sealed class DoneRuns(IReadOnlyList<RunActual> actuals) : ILogStore
{
    public Task<IReadOnlyList<RunActual>> ActualsAsync(LogSpan span, int most, CancellationToken cancellation) => Task.FromResult(actuals);

    public Task<Reading<LogEntry>> AppendAsync(LogEntry entry, Func<LogBefore, Reading<LogEntry>> judge, CancellationToken cancellation) => throw new NotSupportedException();

    public Task<LogPage> PageAsync(LogWish wish, CancellationToken cancellation) => throw new NotSupportedException();

    public Task<IReadOnlyList<LogEntry>> OfRunAsync(string runId, CancellationToken cancellation) => throw new NotSupportedException();

    public Task<IReadOnlyList<LogEntry>> LastAsync(LogKind kind, LogSpan span, int most, CancellationToken cancellation) => throw new NotSupportedException();

    public Task<IReadOnlyList<RunTurn>> TurnsAsync(IReadOnlyList<string> runIds, CancellationToken cancellation) => throw new NotSupportedException();
}
