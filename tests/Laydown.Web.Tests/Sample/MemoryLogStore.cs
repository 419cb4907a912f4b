using Laydown.Measures;
using Laydown.Plan.Log;
using Laydown.Shop.Log;

namespace Laydown.Web.Tests.Sample;

/// <summary>The log in memory, by the words of the port; few entries.</summary>
internal sealed class MemoryLogStore : ILogStore
{
    private readonly Lock gate = new();
    private readonly List<LogEntry> entries = [];

    public Task<Reading<LogEntry>> AppendAsync(LogEntry entry, Func<LogBefore, Reading<LogEntry>> judge, CancellationToken cancellation)
    {
        lock (gate)
        {
            List<LogEntry> counting = [.. entries.Where(e => !e.Struck)];
            LogEntry? struck = counting.FirstOrDefault(e => e.Number == entry.Strikes);
            List<LogEntry> ofRun = [.. counting.Where(e => e.RunId is not null && e.RunId == (entry.RunId ?? struck?.RunId))];
            DateTimeOffset? from = LogBefore.From(entry, ofRun);
            Reading<LogEntry> judged = judge(new(
                ofRun, [.. RunTurns.Of(counting).Where(t => from is not null && t.PressId == entry.PressId && t.RunId != entry.RunId && (t.Stop is null || t.Stop > from))], struck));
            if (!judged.IsTaken)
                return Task.FromResult(judged);
            if (struck is not null)
                entries[entries.IndexOf(struck)] = struck with { Struck = true };
            entries.Add(judged.Value with { Number = entries.Count + 1 });
            return Task.FromResult(Reading.Of(entries[^1]));
        }
    }

    public Task<LogPage> PageAsync(LogWish wish, CancellationToken cancellation)
    {
        List<LogEntry> all = [.. Within(wish.Span ?? new()).Where(e => wish.Kind is null || e.Kind == wish.Kind).Where(e => wish.RunId is null || e.RunId == wish.RunId)];
        List<LogEntry> rest = [.. all.OrderByDescending(e => e.At).ThenByDescending(e => e.Number).Where(e => wish.After is not { } after || e.Number < after.Number)];
        LogEntry? last = rest.Count > wish.Rows ? rest[wish.Rows - 1] : null;
        return Task.FromResult(new LogPage([.. rest.Take(wish.Rows)], all.Count, last is null ? null : new(last.At.ToUnixTimeSeconds(), last.Number)));
    }

    public Task<IReadOnlyList<LogEntry>> OfRunAsync(string runId, CancellationToken cancellation) =>
        Task.FromResult<IReadOnlyList<LogEntry>>([.. Within(new()).Where(e => e.RunId == runId)]);

    public Task<IReadOnlyList<LogEntry>> LastAsync(LogKind kind, LogSpan span, int most, CancellationToken cancellation) =>
        Task.FromResult<IReadOnlyList<LogEntry>>([.. Within(span).Where(e => e.Kind == kind && !e.Struck).TakeLast(most)]);

    public Task<IReadOnlyList<RunActual>> ActualsAsync(LogSpan span, int most, CancellationToken cancellation) =>
        Task.FromResult<IReadOnlyList<RunActual>>([.. Within(span).Where(e => !e.Struck).Select(e => e.Actual).OfType<RunActual>().TakeLast(most)]);

    public Task<IReadOnlyList<RunTurn>> TurnsAsync(IReadOnlyList<string> runIds, CancellationToken cancellation) =>
        Task.FromResult(RunTurns.Of(Within(new()).Where(e => !e.Struck && runIds.Contains(e.RunId ?? "", StringComparer.Ordinal))));

    private List<LogEntry> Within(LogSpan span)
    {
        lock (gate)
            return [.. entries.Where(e => (span.PressId is null || e.PressId == span.PressId) && (span.From is null || e.At >= span.From) && (span.To is null || e.At < span.To))];
    }
}
