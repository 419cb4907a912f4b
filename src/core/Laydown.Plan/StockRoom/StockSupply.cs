using Laydown.Plan.Runs;
using Laydown.Press.Stocks;

namespace Laydown.Plan.StockRoom;

/// <summary>Whether the room holds what a run takes: asked anew whenever a run is looked at or let go, because stock comes, goes and is kept back after it is planned.</summary>
public static class StockSupply
{
    /// <summary>Why a set-up must not be released as things stand now: what was found when it was planned, and stock that is not there.</summary>
    /// <param name="run">The run.</param>
    /// <param name="stocks">Its stocks.</param>
    /// <param name="lots">The room; what is kept back for this run counts as there for it. A stock without a lot counts as described.</param>
    /// <param name="taken">Whether its stock was taken from the room already.</param>
    public static IReadOnlyList<string> RefusalsNow(Run run, IReadOnlyList<Stock> stocks, IReadOnlyList<StockLot> lots, bool taken)
    {
        ArgumentNullException.ThrowIfNull(run);
        IEnumerable<string> others = run.SetUp.Refusals.Where(r => !r.EndsWith(SetUps.OrderEnding, StringComparison.Ordinal));
        return taken ? [.. others] : [.. others, .. stocks.Select(s => SetUps.Lack(s, (int)Math.Ceiling(StockPicks.Needed(run, s)), There(run, s, lots))).OfType<string>()];
    }

    private static int There(Run run, Stock stock, IReadOnlyList<StockLot> lots)
    {
        List<StockLot> own = [.. StockPicks.OfSize(stock, lots)];
        return own.Count == 0 ? stock.OnHand : (int)Math.Floor(own.Sum(l => Math.Min(l.OnHand, l.Free + l.ReservedFor(run.Id))));
    }
}
