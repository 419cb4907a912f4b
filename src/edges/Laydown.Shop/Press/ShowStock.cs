using Laydown.Plan.StockRoom;
using Laydown.Press.Stocks;
using Laydown.Shop.Log;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Press;

/// <summary>Shows the stock room.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="store">Its runs.</param>
/// <param name="room">The room.</param>
/// <param name="log">Tells which runs are done and what they used; null where the shop keeps none.</param>
public sealed class ShowStock(Catalogue catalogue, IShopStore store, IStockRoom room, ILogStore? log = null)
{
    private const int LastMoves = 50;

    // Runs done before these are no longer looked at in the stock room.
    private const int LastDone = 1000;

    /// <summary>The room as it stands, with what planned runs still need.</summary>
    public async Task<StockView> ShowAsync(CancellationToken cancellation)
    {
        IReadOnlyList<StockLot> lots = await room.LotsAsync(cancellation);
        Dictionary<string, ReorderPoint> points = (await room.PointsAsync(cancellation)).ToDictionary(p => p.StockId, StringComparer.Ordinal);
        (catalogue.Stocks as ShelvedStocks)?.Follow(lots);
        IReadOnlyList<StockMove> all = await room.MovesAsync(null, int.MaxValue, cancellation);
        ILookup<string, StockMove> ofRun = all.Where(m => m.RunId is not null).ToLookup(m => m.RunId!, StringComparer.Ordinal);
        IReadOnlyList<Laydown.Plan.Runs.Run> runs = [.. await WaitingRuns.OfAsync(store, cancellation)];
        Dictionary<string, int> made = log is null ? [] : (await log.ActualsAsync(new(), LastDone, cancellation)).GroupBy(a => a.RunId, StringComparer.Ordinal)
            .ToDictionary(a => a.Key, a => a.Last().Made, StringComparer.Ordinal);
        IReadOnlyList<Stock> described = ReorderPoint.On((catalogue.Stocks as ShelvedStocks)?.Described ?? catalogue.Stocks, [.. points.Values]);
        return new(
            [.. StockLines.Of(described, lots, [.. runs.Where(r => !made.ContainsKey(r.Id) && !RunUse.IsTaken(ofRun[r.Id]))])
                .Select(l => points.TryGetValue(l.StockId, out ReorderPoint? point) ? l with { SetBy = point.By } : l)],
            [.. lots.Where(l => l.OnHand > 0 || l.Reserved.Count > 0).OrderBy(l => l.StockId, StringComparer.Ordinal).ThenBy(l => l.Id, StringComparer.Ordinal)],
            [.. all.Take(LastMoves)],
            [.. runs.SelectMany(r => RunStockLines.Of(r, catalogue.Stocks, lots, [.. ofRun[r.Id]], made.TryGetValue(r.Id, out int sheets) ? sheets : null))]);
    }
}
