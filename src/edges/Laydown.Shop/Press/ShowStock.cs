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
        IReadOnlyList<StockMove> all = await room.MovesAsync(null, int.MaxValue, cancellation);
        ILookup<string, StockMove> taken = all.Where(m => m.Kind == StockMoveKind.Consume && m.RunId is not null).ToLookup(m => m.RunId!, StringComparer.Ordinal);
        IReadOnlyList<Laydown.Plan.Runs.Run> runs = [.. await WaitingRuns.OfAsync(store, cancellation)];
        IReadOnlyList<Stock> described = (catalogue.Stocks as ShelvedStocks)?.Described ?? catalogue.Stocks;
        return new(
            StockLines.Of(described, lots, [.. runs.Where(r => !taken.Contains(r.Id))]),
            [.. lots.Where(l => l.OnHand > 0 || l.Reserved.Count > 0).OrderBy(l => l.StockId, StringComparer.Ordinal).ThenBy(l => l.Id, StringComparer.Ordinal)],
            [.. all.Take(LastMoves)],
            [.. runs.SelectMany(r => OfRun(r, lots, taken[r.Id]))]);
    }

    private IEnumerable<RunStockLine> OfRun(Laydown.Plan.Runs.Run run, IReadOnlyList<StockLot> lots, IEnumerable<StockMove> taken)
    {
        foreach (Stock stock in StockPicks.StockIds(run).Select(id => catalogue.Stocks.FirstOrDefault(s => string.Equals(s.Id, id, StringComparison.Ordinal))).OfType<Stock>())
        {
            HashSet<string> own = [.. StockPicks.OfSize(stock, lots).Select(l => l.Id)];
            decimal needed = StockPicks.Needed(run, stock);
            yield return new(run.Id, stock.Id, stock.Name, StockLines.Unit(stock, needed), needed,
                lots.Where(l => own.Contains(l.Id)).Sum(l => l.ReservedFor(run.Id)), taken.Where(m => own.Contains(m.LotId)).Sum(m => m.Quantity));
        }
    }
}
