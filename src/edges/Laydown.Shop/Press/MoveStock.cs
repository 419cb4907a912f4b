using Laydown.Measures;
using Laydown.Plan.StockRoom;
using Laydown.Press.Stocks;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Press;

/// <summary>Does moves in the stock room: goods in, taken, counted, put elsewhere; all of them or none.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="room">The room.</param>
public sealed class MoveStock(Catalogue catalogue, IStockRoom room)
{
    /// <summary>Does the moves that the room as it stands gives rise to.</summary>
    /// <param name="moves">From the lots to the moves, or why none is done; asked while no other writer changes the room.</param>
    /// <param name="cancellation">Stops before saving.</param>
    public async Task<Reading<StockChange>> DoAsync(Func<IReadOnlyList<StockLot>, Reading<IReadOnlyList<StockMove>>> moves, CancellationToken cancellation)
    {
        IReadOnlyList<Stock> described = Described;
        return await FollowedAsync(await room.ChangeAsync(lots => moves(lots).Then(m => StockMoves.Do(lots, m, described)), cancellation));
    }

    /// <summary>Does the moves that the room as it stands and what was done for a run give rise to.</summary>
    /// <param name="runId">The run.</param>
    /// <param name="moves">From the lots and the moves of the run, in the order they were done, to the moves, or why none is done; asked while no other writer changes the room.</param>
    /// <param name="cancellation">Stops before saving.</param>
    public async Task<Reading<StockChange>> DoAsync(string runId, Func<IReadOnlyList<StockLot>, IReadOnlyList<StockMove>, Reading<IReadOnlyList<StockMove>>> moves, CancellationToken cancellation)
    {
        IReadOnlyList<Stock> described = Described;
        return await FollowedAsync(await room.ChangeAsync(runId, (lots, before) => moves(lots, before).Then(m => StockMoves.Do(lots, m, described)), cancellation));
    }

    private IReadOnlyList<Stock> Described => (catalogue.Stocks as ShelvedStocks)?.Described ?? catalogue.Stocks;

    private async Task<Reading<StockChange>> FollowedAsync(Reading<StockChange> change)
    {
        if (change.IsTaken)
            (catalogue.Stocks as ShelvedStocks)?.Follow(await room.LotsAsync(CancellationToken.None));
        return change;
    }
}
