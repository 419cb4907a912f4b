using Laydown.Measures;
using Laydown.Plan.StockRoom;
using Laydown.Press.Stocks;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Shop.Press;

/// <summary>Keeps stock back for a run, gives it free again, or takes it and brings the run's usable rests in.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">Its runs.</param>
/// <param name="move">Does moves.</param>
/// <param name="clock">Tells the time.</param>
/// <param name="use">Brings what is taken to what a run used, where it is done by the log already; null where the shop keeps none.</param>
public sealed class RunStock(Catalogue catalogue, IShopStore store, MoveStock move, TimeProvider clock, BookUse? use = null)
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
        List<Stock> stocks = [.. StockPicks.StockIds(run).Select(id => catalogue.Stocks.FirstOrDefault(s => string.Equals(s.Id, id, StringComparison.Ordinal))).OfType<Stock>()];
        if (StockPicks.StockIds(run).FirstOrDefault(id => stocks.All(s => s.Id != id)) is { } unknown)
            return Reading.Refused<StockChange>(new InputFault("stock room", null, "stockId", unknown, "a stock the shop keeps"));
        if (what != RunStockStep.Release && record.State == RunState.Aborted)
            return Reading.Refused<StockChange>(new InputFault("stock room", null, "runId", Invariant($"{runId}, aborted"), "a run that is planned"));
        DateTimeOffset now = clock.GetUtcNow();
        Reading<StockChange> done = await move.DoAsync(runId, (lots, before) => what switch
        {
            RunStockStep.Reserve or RunStockStep.Take when RunUse.IsTaken(before) => Reading.Refused<IReadOnlyList<StockMove>>(TakenAlready(runId, before)),
            RunStockStep.Reserve => StockPicks.Reserve(run, stocks, lots, now, by),
            RunStockStep.Take => StockPicks.Take(run, stocks, lots, string.IsNullOrWhiteSpace(place) ? RestPlace : place, DateOnly.FromDateTime(clock.GetLocalNow().Date), now, by),
            _ => Released(runId, lots, now, by),
        }, cancellation);
        if (done.IsTaken && what == RunStockStep.Take && use is not null)
            await use.AlignAsync(runId, by, CancellationToken.None);
        return done;
    }

    private static InputFault TakenAlready(string runId, IReadOnlyList<StockMove> before)
    {
        StockMove taken = before.Last(m => m.Kind == StockMoveKind.Consume);
        return new("stock room", null, "runId", Invariant($"stock of {runId} was taken {taken.At:yyyy-MM-dd} by {taken.By}"), "each run once; what a remake needs is taken from a lot");
    }

    private static Reading<IReadOnlyList<StockMove>> Released(string runId, IReadOnlyList<StockLot> lots, DateTimeOffset now, string by) =>
        Reading.Of<IReadOnlyList<StockMove>>([.. lots.Where(l => l.ReservedFor(runId) > 0).Select(l => new StockMove(StockMoveKind.Release, l.Id, l.ReservedFor(runId), now, by, runId))]);
}
