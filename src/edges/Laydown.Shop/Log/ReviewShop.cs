using Laydown.Measures;
using Laydown.Plan.Calendar;
using Laydown.Plan.Log;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Log;

/// <summary>Reviews a time: use of the presses, yield, share on time, causes of remakes.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="log">The log.</param>
/// <param name="clock">Tells the time.</param>
public sealed class ReviewShop(Catalogue catalogue, ILogStore log, TimeProvider clock)
{
    /// <summary>Days that are looked back on where nothing else is asked for.</summary>
    public const int Days = 30;

    private const int Most = 20_000;

    // Minutes of a run are a sum of doubles.
    private const double AtOnceMinutes = 1e-6;

    /// <summary>The review of a time; its end is now and its start <see cref="Days"/> before where not told. A time that ends before it begins is refused.</summary>
    public async Task<Reading<ShopReview>> ReviewAsync(LogSpan span, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(span);
        DateTimeOffset to = span.To ?? clock.GetLocalNow(), from = span.From ?? to.AddDays(-Days);
        Reading<LogSpan> checkedSpan = LogSpans.Of(span.PressId, from, to);
        if (span.To is null && from >= to)
            return Reading.Refused<ShopReview>(new InputFault("log", null, "from", Invariant($"{from:yyyy-MM-dd HH:mm}"), Invariant($"before now, {to:yyyy-MM-dd HH:mm}")));
        if (!checkedSpan.IsTaken)
            return Reading.Refused<ShopReview>(checkedSpan.Faults);
        LogSpan whole = checkedSpan.Value;
        IReadOnlyList<RunActual> actuals = await log.ActualsAsync(whole, Most, cancellation);
        List<RemakeNote> remakes = [.. (await log.LastAsync(LogKind.Remake, whole, Most, cancellation)).Select(e => e.Remake).OfType<RemakeNote>()];
        IReadOnlyList<RunTurn> turns = await TurnsAsync(actuals, cancellation);
        return Reading.Of(new ShopReview(
            from, to, span.PressId, actuals.Count, ShopFigures.Of(actuals, remakes, Hours(whole, turns, from, to)), CauseShares.Of(remakes), Overlaps(turns)));
    }

    // A run without a break was at its press from its first start to its end; of others the turns are looked up.
    private async Task<IReadOnlyList<RunTurn>> TurnsAsync(IReadOnlyList<RunActual> actuals, CancellationToken cancellation)
    {
        ILookup<bool, RunActual> parted = actuals.ToLookup(a => (a.Ended - a.Started).TotalMinutes > a.Minutes + AtOnceMinutes);
        IReadOnlyList<RunTurn> broken = parted[true].Any() ? await log.TurnsAsync([.. parted[true].Select(a => a.RunId)], cancellation) : [];
        return [.. parted[false].Select(a => new RunTurn(a.RunId, a.PressId, a.Started, a.Ended, 0, 0)), .. broken];
    }

    private IReadOnlyList<RunOverlap> Overlaps(IReadOnlyList<RunTurn> turns) =>
        [.. RunTurns.Overlaps(turns).Select(o => o with { From = ShopTimes.Of(o.From, catalogue), To = ShopTimes.Of(o.To, catalogue) })];

    private PressHours? Hours(LogSpan span, IReadOnlyList<RunTurn> turns, DateTimeOffset from, DateTimeOffset to)
    {
        if (catalogue.Calendar is null || (to - from).TotalDays > OpenTimes.MostDays)
            return null;
        OpenTimes open = new(catalogue.Calendar);
        ILookup<string, RunTurn> ofPress = turns.ToLookup(t => t.PressId, StringComparer.Ordinal);
        return PressHours.Sum(catalogue.Presses.Where(p => span.PressId is null || string.Equals(p.Id, span.PressId, StringComparison.Ordinal))
            .Select(p => RunTurns.Hours(ofPress[p.Id], open.Between(from, to, p.Id), from, to)));
    }
}
