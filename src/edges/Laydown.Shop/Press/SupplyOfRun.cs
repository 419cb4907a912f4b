using Laydown.Plan.StockRoom;
using Laydown.Press.Stocks;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Press;

/// <summary>Tells of a run what the stock room says now, where what was found when it was planned tells of another day.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="room">The room.</param>
public sealed class SupplyOfRun(Catalogue catalogue, IStockRoom room)
{
    /// <summary>The run with the refusals of its set-up as the room stands now.</summary>
    public async Task<Laydown.Plan.Runs.Run> AsNowAsync(Laydown.Plan.Runs.Run run, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(run);
        IReadOnlyList<StockLot> lots = await room.LotsAsync(cancellation);
        bool taken = RunUse.IsTaken(await room.MovesOfRunAsync(run.Id, cancellation));
        List<Stock> stocks = [.. StockPicks.StockIds(run).Select(id => catalogue.Stocks.FirstOrDefault(s => string.Equals(s.Id, id, StringComparison.Ordinal))).OfType<Stock>()];
        return run with { SetUp = run.SetUp with { Refusals = StockSupply.RefusalsNow(run, stocks, lots, taken) } };
    }
}
