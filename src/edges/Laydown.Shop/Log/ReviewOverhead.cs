using Laydown.Measures;
using Laydown.Plan.Costs;
using Laydown.Plan.Log;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Shop.Log;

/// <summary>Sets the overhead that the prices of runs carried in a time against what was really spent.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">Its runs.</param>
/// <param name="log">The log: runs that were done, overhead that was spent.</param>
/// <param name="clock">Tells the time.</param>
public sealed class ReviewOverhead(Catalogue catalogue, IShopStore store, ILogStore log, TimeProvider clock)
{
    /// <summary>Longest time, days.</summary>
    public const int MostDays = 3660;

    private const int Most = 100_000;

    /// <summary>The review of a time; without days, of this month so far.</summary>
    /// <param name="from">First day; null for the first of the last day's month.</param>
    /// <param name="to">Last day; null for today.</param>
    /// <param name="counted">Which runs count.</param>
    /// <param name="cancellation">Ends the reading.</param>
    /// <returns>The review, or why the days cannot be.</returns>
    public async Task<Reading<OverheadReview>> ReviewAsync(DateOnly? from, DateOnly? to, CountedRuns counted, CancellationToken cancellation)
    {
        DateOnly last = to ?? DateOnly.FromDateTime(clock.GetLocalNow().Date), first = from ?? new DateOnly(last.Year, last.Month, 1);
        if (last < first)
            return Reading.Refused<OverheadReview>(new InputFault("overhead", null, "to", Invariant($"{last:yyyy-MM-dd}"), Invariant($"{first:yyyy-MM-dd} or later")));
        if (last.DayNumber - first.DayNumber >= MostDays || first.Year < 2000 || last.Year > 9000)
            return Reading.Refused<OverheadReview>(new InputFault("overhead", null, "from", Invariant($"{first:yyyy-MM-dd} to {last:yyyy-MM-dd}"), Invariant($"at most {MostDays} days, since 2000")));
        LogSpan span = new(null, Start(first), Start(last.AddDays(1)));
        IReadOnlyList<RunRecord> runs = await store.RunsAsync(cancellation);
        HashSet<string> done = counted == CountedRuns.Done ? [.. (await log.ActualsAsync(span, Most, cancellation)).Select(a => a.RunId)] : [];
        List<CostSheet> sheets = [.. runs.Where(r => counted == CountedRuns.Done ? done.Contains(r.Run.Id) : r.State != RunState.Aborted && r.Run.Due >= first && r.Run.Due <= last).Select(r => r.Run.Cost)];
        List<OverheadSpent> spent = [.. (await log.LastAsync(LogKind.Overhead, span, Most, cancellation)).Select(e => e.Overhead).OfType<OverheadSpent>()];
        return Reading.Of(OverheadReviews.Of(sheets, spent, catalogue.Rates, first, last));
    }

    /// <summary>What was spent in a time, earliest first, struck entries left out.</summary>
    public Task<IReadOnlyList<LogEntry>> SpentAsync(DateOnly first, DateOnly last, CancellationToken cancellation) =>
        log.LastAsync(LogKind.Overhead, new(null, Start(first), Start(last.AddDays(1))), Most, cancellation);

    private DateTimeOffset Start(DateOnly day)
    {
        DateTime local = day.ToDateTime(TimeOnly.MinValue);
        return new(local, clock.LocalTimeZone.GetUtcOffset(local));
    }
}
