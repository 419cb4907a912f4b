using Laydown.Measures;
using Laydown.Plan.Log;
using Laydown.Shop.Log;
using Laydown.Shop.Press;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>What was read at presses, in memory, and a log that tells done runs and readings of ink.</summary>
internal sealed class CareBench : IPressCareBook, ILogStore
{
    private readonly Dictionary<string, PressCarePage> pages = new(StringComparer.Ordinal);

    public List<RunActual> Done { get; } = [];

    public List<LogEntry> Ink { get; } = [];

    public Task<PressCarePage?> ReadAsync(string pressId, CancellationToken cancellation) => Task.FromResult(pages.GetValueOrDefault(pressId));

    public Task<Reading<PressCarePage>> ChangeAsync(string pressId, Func<PressCarePage?, Reading<PressCarePage>> change, CancellationToken cancellation)
    {
        Reading<PressCarePage> made = change(pages.GetValueOrDefault(pressId));
        if (made.IsTaken)
            pages[pressId] = made.Value;
        return Task.FromResult(made);
    }

    public Task<IReadOnlyList<RunActual>> ActualsAsync(LogSpan span, int most, CancellationToken cancellation) => Task.FromResult<IReadOnlyList<RunActual>>(Done);

    public Task<IReadOnlyList<LogEntry>> LastAsync(LogKind kind, LogSpan span, int most, CancellationToken cancellation) =>
        Task.FromResult<IReadOnlyList<LogEntry>>([.. Ink.Where(e => e.Kind == kind && e.PressId == span.PressId)]);

    public Task<Reading<LogEntry>> AppendAsync(LogEntry entry, Func<LogBefore, Reading<LogEntry>> judge, CancellationToken cancellation) => throw new NotSupportedException();

    public Task<LogPage> PageAsync(LogWish wish, CancellationToken cancellation) => throw new NotSupportedException();

    public Task<IReadOnlyList<LogEntry>> OfRunAsync(string runId, CancellationToken cancellation) => throw new NotSupportedException();

    public Task<IReadOnlyList<RunTurn>> TurnsAsync(IReadOnlyList<string> runIds, CancellationToken cancellation) => throw new NotSupportedException();
}
