using Laydown.Measures;
using Laydown.Plan.StockRoom;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Shop.Press;

/// <summary>Keeps stock back for a run, gives it free again, or takes it and brings the run's usable rests in.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">Its runs.</param>
/// <param name="move">Does moves.</param>
/// <param name="clock">Tells the time.</param>
public sealed class RunStock(Catalogue catalogue, IShopStore store, MoveStock move, TimeProvider clock)
{
    /// <summary>Where rests go when no place is given.</summary>
    public const string RestPlace = "offcut rack";

    /// <summary>Does it.</summary>
    /// <param name="runId">The run.</param>
    /// <param name="what">What is done.</param>
    /// <param name="by">Who does it.</param>
    /// <param name="place">Where rests are put; null for <see cref="RestPlace"/>.</param>
    /// <param name="cancellation">Stops before saving.</param>
    public async Task<Reading<StockChange>> DoAsync(string runId, RunStockStep what, string by, string? place, CancellationToken cancellation)
    {
        if (await store.RunAsync(runId, cancellation) is not { } record)
            return Reading.Refused<StockChange>(new InputFault("stock room", null, "runId", runId, "the id of a run of this shop"));
        Laydown.Plan.Runs.Run run = record.Run;
        if (catalogue.Stocks.FirstOrDefault(s => string.Equals(s.Id, run.StockId, StringComparison.Ordinal)) is not { } stock)
            return Reading.Refused<StockChange>(new InputFault("stock room", null, "stockId", run.StockId, "a stock the shop keeps"));
        DateTimeOffset now = clock.GetUtcNow();
        return await move.DoAsync(lots => what switch
        {
            RunStockStep.Reserve when record.State == RunState.Aborted => Reading.Refused<IReadOnlyList<StockMove>>(new InputFault("stock room", null, "runId", Invariant($"{runId}, aborted"), "a run that is planned")),
            RunStockStep.Reserve => StockPicks.Reserve(run, stock, lots, now, by),
            RunStockStep.Take => StockPicks.Take(run, stock, lots, string.IsNullOrWhiteSpace(place) ? RestPlace : place, DateOnly.FromDateTime(clock.GetLocalNow().Date), now, by),
            _ => Released(runId, lots, now, by),
        }, cancellation);
    }

    private static Reading<IReadOnlyList<StockMove>> Released(string runId, IReadOnlyList<StockLot> lots, DateTimeOffset now, string by) =>
        Reading.Of<IReadOnlyList<StockMove>>([.. lots.Where(l => l.ReservedFor(runId) > 0).Select(l => new StockMove(StockMoveKind.Release, l.Id, l.ReservedFor(runId), now, by, runId))]);
}
