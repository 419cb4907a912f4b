using Laydown.Measures;
using Laydown.Plan.Log;
using Laydown.Plan.StockRoom;
using Laydown.Press.Stocks;
using Laydown.Shop.Log;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Press;

/// <summary>Books what a run really used when the log says it is done, and brings it back when the log is corrected: the room always stands as the log says, so nothing is taken twice.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">Its runs.</param>
/// <param name="log">The log.</param>
/// <param name="room">The room.</param>
/// <param name="clock">Tells the time.</param>
public sealed class BookUse(Catalogue catalogue, IShopStore store, ILogStore log, IStockRoom room, TimeProvider clock)
{
    private readonly MoveStock move = new(catalogue, room);

    /// <summary>Brings the room to what the log says of a run; where the room holds less than was used, what is there is taken.</summary>
    /// <param name="runId">The run.</param>
    /// <param name="entry">The entry of the log that gives rise to it.</param>
    /// <param name="by">Who told it.</param>
    /// <param name="cancellation">Stops before saving.</param>
    /// <exception cref="InvalidOperationException">The room takes the moves for none, which cannot be.</exception>
    public async Task BookAsync(string runId, long entry, string by, CancellationToken cancellation)
    {
        if (await store.RunAsync(runId, cancellation) is not { } record)
            return;
        Laydown.Plan.Runs.Run run = record.Run;
        RunActual? actual = await ActualAsync(runId, cancellation);
        string why = actual is null ? Invariant($"log {entry}: the end was struck") : Invariant($"log {entry}: {actual.Good} good, {actual.Spoiled} spoiled, {run.SheetCount} planned");
        StockMove cause = new(StockMoveKind.Consume, "", 0, clock.GetLocalNow(), string.IsNullOrWhiteSpace(by) ? "log" : by, Why: why, LogEntry: entry);
        List<Stock> stocks = [.. StockPicks.StockIds(run).Select(id => catalogue.Stocks.FirstOrDefault(s => string.Equals(s.Id, id, StringComparison.Ordinal))).OfType<Stock>()];
        Reading<StockChange> booked = await move.DoAsync(
            runId, (lots, before) => Reading.Of(RunUse.Moves(run, stocks, lots, before, actual?.Made, RunStock.RestPlace, cause)), cancellation);
        if (!booked.IsTaken)
            throw new InvalidOperationException(Invariant($"Stock of {runId}: {string.Join(' ', booked.Faults)}"));
    }

    /// <summary>Brings what was taken by hand to what the log says, where the run is done.</summary>
    /// <param name="runId">The run.</param>
    /// <param name="by">Who took it.</param>
    /// <param name="cancellation">Stops before saving.</param>
    public async Task AlignAsync(string runId, string by, CancellationToken cancellation)
    {
        if ((await log.OfRunAsync(runId, cancellation)).LastOrDefault(e => !e.Struck && e.Kind is LogKind.Start or LogKind.Stop) is { Actual: not null } end)
            await BookAsync(runId, end.Number, by, cancellation);
    }

    /// <summary>What a run needs, used and took of each of its stocks.</summary>
    /// <param name="run">The run.</param>
    /// <param name="cancellation">Stops.</param>
    public async Task<IReadOnlyList<RunStockLine>> OfRunAsync(Laydown.Plan.Runs.Run run, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(run);
        IReadOnlyList<StockMove> moves = await room.MovesOfRunAsync(run.Id, cancellation);
        return RunStockLines.Of(run, catalogue.Stocks, await room.LotsAsync(cancellation), moves, (await ActualAsync(run.Id, cancellation))?.Made);
    }

    // What the run took, if the last of its starts and stops that count ended it.
    private async Task<RunActual?> ActualAsync(string runId, CancellationToken cancellation) =>
        (await log.OfRunAsync(runId, cancellation)).LastOrDefault(e => !e.Struck && e.Kind is LogKind.Start or LogKind.Stop)?.Actual;
}
