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

    /// <summary>The review of a time; its end is now and its start <see cref="Days"/> before where not told.</summary>
    public async Task<ShopReview> ReviewAsync(LogSpan span, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(span);
        DateTimeOffset to = span.To ?? clock.GetLocalNow(), from = span.From ?? to.AddDays(-Days);
        LogSpan whole = new(span.PressId, from, to);
        IReadOnlyList<RunActual> actuals = await log.ActualsAsync(whole, Most, cancellation);
        List<RemakeNote> remakes = [.. (await log.LastAsync(LogKind.Remake, whole, Most, cancellation)).Select(e => e.Remake).OfType<RemakeNote>()];
        return new(from, to, span.PressId, actuals.Count, ShopFigures.Of(actuals, remakes, OpenMinutes(whole, from, to)), CauseShares.Of(remakes));
    }

    private double? OpenMinutes(LogSpan span, DateTimeOffset from, DateTimeOffset to)
    {
        if (catalogue.Calendar is null || (to - from).TotalDays > OpenTimes.MostDays)
            return null;
        OpenTimes open = new(catalogue.Calendar);
        return catalogue.Presses.Where(p => span.PressId is null || string.Equals(p.Id, span.PressId, StringComparison.Ordinal))
            .Sum(p => open.Between(from, to, p.Id).Sum(s => (s.End - s.Start).TotalMinutes));
    }
}
