using Laydown.Measures;
using Laydown.Plan.Costs;
using Laydown.Plan.Log;
using Laydown.Press.Machines;
using Laydown.Shop.Orders;
using Laydown.Shop.Press;

namespace Laydown.Shop.Log;

/// <summary>Takes an entry into the log: judged first, then kept whole or not at all.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">Runs of the shop.</param>
/// <param name="log">The log.</param>
/// <param name="clock">Tells the time.</param>
/// <param name="use">Books what a run used when it is done; null where the shop keeps no stock room.</param>
public sealed class KeepLog(Catalogue catalogue, IShopStore store, ILogStore log, TimeProvider clock, BookUse? use = null)
{
    /// <summary>Keeps an entry. Where it has a run, press and, for a stop that ends it, what it took are filled in; a remake without a cost gets one.</summary>
    /// <param name="entry">The entry; an instant of <c>default</c> is now. It is kept in the time zone of the shop, whose days say what was on time.</param>
    /// <param name="cancellation">Stops; then nothing is kept.</param>
    /// <returns>The entry as kept, with its number, or why it is refused.</returns>
    public async Task<Reading<LogEntry>> KeepAsync(LogEntry entry, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(entry);
        DateTimeOffset now = ShopTimes.Of(clock.GetLocalNow(), catalogue);
        Laydown.Plan.Runs.Run? run = entry.RunId is null ? null : (await store.RunAsync(entry.RunId, cancellation))?.Run;
        string pressId = run?.PressId ?? entry.PressId;
        PressDescription? press = catalogue.Presses.FirstOrDefault(p => string.Equals(p.Id, pressId, StringComparison.Ordinal));
        if (press is null && entry.Kind is not (LogKind.Strike or LogKind.Overhead) && (run is not null || entry.RunId is null))
            return Reading.Refused<LogEntry>(new InputFault("log", null, "/pressId", Invariant($"'{pressId}'"), Invariant($"a press of this shop: {string.Join(", ", catalogue.Presses.Select(p => p.Id))}")));

        if (entry.Overhead is { } spent && !Overheads.Names(catalogue.Rates).Contains(spent.Name, StringComparer.Ordinal))
            return Reading.Refused<LogEntry>(new InputFault("log", null, "/overhead/name", Invariant($"'{spent.Name}'"), Invariant($"an overhead of this shop: {string.Join(", ", Overheads.Names(catalogue.Rates))}")));

        LoggedRun? logged = run is null ? null : LoggedRuns.Of(run, press?.MaxThicknessMm ?? 30);
        LogEntry told = entry with
        {
            Number = 0,
            Struck = false,
            Actual = null,
            PressId = pressId ?? "",
            By = entry.By ?? "",
            At = ShopTimes.Of(entry.At == default ? now : entry.At, catalogue),
            Remake = entry.Remake is null || run is null ? entry.Remake : RemakeCosts.Reckoned(entry.Remake, run, catalogue),
        };
        Dictionary<string, double> tanks = (press?.Tanks ?? []).ToDictionary(t => t.Id, t => t.CapacityMl, StringComparer.Ordinal);
        LogEntry? struck = null;
        Reading<LogEntry> kept = await log.AppendAsync(
            told,
            before =>
            {
                struck = before.Struck;
                return Judged(told, logged, tanks, before, now);
            },
            cancellation);

        // Once an entry is kept, what follows from it is not left off half-way.
        if (use is not null && kept.IsTaken && kept.Value is { RunId: { } done } && (kept.Value.Actual is not null || struck?.Actual is not null))
            await use.BookAsync(done, kept.Value.Number, kept.Value.By, CancellationToken.None);
        return kept;
    }

    private static Reading<LogEntry> Judged(LogEntry told, LoggedRun? run, Dictionary<string, double> tanks, LogBefore before, DateTimeOffset now)
    {
        // A strike belongs to the run and the press of what it strikes.
        LogEntry entry = told.Kind == LogKind.Strike && before.Struck is { } struck ? told with { RunId = struck.RunId, PressId = struck.PressId } : told;
        LoggedRun? of = entry.Kind == LogKind.Strike ? null : run;
        IReadOnlyList<InputFault> faults = LogFaults.Of(entry.Kind == LogKind.Strike ? entry with { RunId = null } : entry, of, tanks, before, now);
        if (faults.Count > 0)
            return Reading.Refused<LogEntry>(faults);
        return Reading.Of(entry.Stop is { Done: true } && run is not null ? entry with { Actual = RunActuals.Of(run, [.. before.OfRun, entry]) } : entry);
    }
}
