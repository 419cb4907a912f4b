using Laydown.Plan.StockRoom;
using Laydown.Press.Stocks;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Press;

/// <summary>Shows the stock room.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">Its runs.</param>
/// <param name="room">The room.</param>
public sealed class ShowStock(Catalogue catalogue, IShopStore store, IStockRoom room)
{
    private const int LastMoves = 50;

    /// <summary>The room as it stands, with what planned runs still need.</summary>
    public async Task<StockView> ShowAsync(CancellationToken cancellation)
    {
        IReadOnlyList<StockLot> lots = await room.LotsAsync(cancellation);
        (catalogue.Stocks as ShelvedStocks)?.Follow(lots);
        IReadOnlyList<StockMove> moves = await room.MovesAsync(null, LastMoves, cancellation);
        HashSet<string> taken = [.. (await room.MovesAsync(null, int.MaxValue, cancellation)).Where(m => m.Kind == StockMoveKind.Consume).Select(m => m.RunId).OfType<string>()];
        IReadOnlyList<Laydown.Plan.Runs.Run> runs = [.. await WaitingRuns.OfAsync(store, cancellation)];
        IReadOnlyList<Stock> described = (catalogue.Stocks as ShelvedStocks)?.Described ?? catalogue.Stocks;
        return new(
            StockLines.Of(described, lots, [.. runs.Where(r => !taken.Contains(r.Id))]),
            [.. lots.Where(l => l.OnHand > 0 || l.Reserved.Count > 0).OrderBy(l => l.StockId, StringComparer.Ordinal).ThenBy(l => l.Id, StringComparer.Ordinal)],
            moves);
    }
}
