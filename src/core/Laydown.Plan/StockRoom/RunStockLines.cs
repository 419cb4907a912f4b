using Laydown.Press.Stocks;

namespace Laydown.Plan.StockRoom;

/// <summary>What runs need of their stocks, what is kept back and taken, and what they used.</summary>
public static class RunStockLines
{
    /// <summary>A line for each stock of a run.</summary>
    /// <param name="run">The run.</param>
    /// <param name="stocks">Stocks of the shop; those it does not know have no line.</param>
    /// <param name="lots">The room.</param>
    /// <param name="moves">Moves of the run.</param>
    /// <param name="made">Sheets it made by the log, good and spoiled; null till it is done.</param>
    public static IReadOnlyList<RunStockLine> Of(Runs.Run run, IReadOnlyList<Stock> stocks, IReadOnlyList<StockLot> lots, IReadOnlyList<StockMove> moves, long? made)
    {
        List<Stock> own = [.. StockPicks.StockIds(run).Select(id => stocks.FirstOrDefault(s => string.Equals(s.Id, id, StringComparison.Ordinal))).OfType<Stock>()];
        IReadOnlyDictionary<string, decimal>? used = made is { } sheets ? RunUse.Used(run, own, sheets) : null;
        return [.. own.Select(stock =>
        {
            decimal needed = StockPicks.Needed(run, stock);
            return new RunStockLine(run.Id, stock.Id, stock.Name, StockLines.Unit(stock, needed), needed,
                StockPicks.OfSize(stock, lots).Sum(l => l.ReservedFor(run.Id)), RunUse.Taken(stock, lots, moves), used?[stock.Id]);
        })];
    }
}
