using Laydown.Measures;
using Laydown.Plan.StockRoom;
using Laydown.Press.Stocks;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Press;

/// <summary>Takes goods into the stock room as a new lot.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="move">Does moves.</param>
/// <param name="clock">Tells the time.</param>
public sealed class ReceiveStock(Catalogue catalogue, MoveStock move, TimeProvider clock)
{
    /// <summary>A new lot.</summary>
    /// <param name="goods">What comes in.</param>
    /// <param name="cancellation">Stops before saving.</param>
    public async Task<Reading<StockChange>> ReceiveAsync(GoodsIn goods, CancellationToken cancellation)
    {
        Stock? stock = catalogue.Stocks.FirstOrDefault(s => string.Equals(s.Id, goods.StockId, StringComparison.Ordinal));
        if (stock is null)
        {
            return Reading.Refused<StockChange>(new InputFault("stock room", null, "stockId", goods.StockId,
                "one of " + string.Join(", ", catalogue.Stocks.Where(s => s.OtherSizeOf is null).Select(s => s.Id))));
        }

        DateTimeOffset now = clock.GetUtcNow();
        return await move.DoAsync(
            lots =>
            {
                StockLot lot = new(StockPicks.NextName(lots), stock.OtherSizeOf ?? stock.Id, stock.Kind, goods.WidthMm ?? stock.WidthMm, goods.LengthMm ?? stock.LengthMm, goods.Place, 0, [],
                    DateOnly.FromDateTime(clock.GetLocalNow().Date), null, goods.SupplierLot);
                return Reading.Of<IReadOnlyList<StockMove>>([new(StockMoveKind.Receive, lot.Id, goods.Quantity, now, goods.By, Lot: lot)]);
            },
            cancellation);
    }
}
