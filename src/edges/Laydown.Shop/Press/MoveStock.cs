using Laydown.Measures;
using Laydown.Plan.StockRoom;
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
        ShelvedStocks? shelf = catalogue.Stocks as ShelvedStocks;
        Reading<StockChange> change = await room.ChangeAsync(lots => moves(lots).Then(m => StockMoves.Do(lots, m, shelf?.Described ?? catalogue.Stocks)), cancellation);
        if (change.IsTaken)
            shelf?.Follow(await room.LotsAsync(CancellationToken.None));
        return change;
    }
}
