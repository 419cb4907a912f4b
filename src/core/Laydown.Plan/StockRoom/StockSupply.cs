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
        return taken ? [.. others] : [.. others, .. stocks.Select(s => Lacking(run, s, [.. StockPicks.OfSize(s, lots)])).OfType<string>()];
    }

    private static string? Lacking(Run run, Stock stock, List<StockLot> own) =>
        SetUps.Lack(stock, (int)Math.Ceiling(StockPicks.Needed(run, stock)), There(run, stock, own)) ?? (stock.Kind == StockKind.Roll ? InOneLength(run, stock, own) : null);

    // Metres enough, but on rolls that do not hold a piece: it could not be kept back either.
    private static string? InOneLength(Run run, Stock stock, List<StockLot> own)
    {
        decimal left = StockPicks.Needed(run, stock) - own.Sum(l => l.ReservedFor(run.Id));
        return own.Count > 0 && left > 0 && RollPicks.Of(run, stock, own, StockPicks.SheetsOf(run, stock), left).Fault is { } fault
            ? Invariant($"{stock.Name}: {fault.Found}. {SetUps.OrderEnding}")
            : null;
    }

    private static int There(Run run, Stock stock, List<StockLot> own) =>
        own.Count == 0 ? stock.OnHand : (int)Math.Floor(own.Sum(l => Math.Min(l.OnHand, l.Free + l.ReservedFor(run.Id))));
}
