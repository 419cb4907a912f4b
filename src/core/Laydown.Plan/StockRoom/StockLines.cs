using Laydown.Press.Stocks;

namespace Laydown.Plan.StockRoom;

/// <summary>Sums the room up by stock and says what to order.</summary>
public static class StockLines
{
    /// <summary>A line for each stock the shop describes, in its order; a stock without lots counts as its description says.</summary>
    /// <param name="described">Stocks as the shop describes them.</param>
    /// <param name="lots">The room.</param>
    /// <param name="runs">Runs that are planned and not yet printed, with their stock.</param>
    public static IReadOnlyList<StockLine> Of(IReadOnlyList<Stock> described, IReadOnlyList<StockLot> lots, IReadOnlyList<Runs.Run> runs) =>
        [.. described.Select(s => Of(s, [.. StockPicks.OfSize(s, lots)], runs))];

    private static StockLine Of(Stock stock, List<StockLot> own, IReadOnlyList<Runs.Run> runs)
    {
        decimal onHand = own.Count == 0 ? stock.OnHand : own.Sum(l => l.OnHand);
        decimal reserved = own.Sum(l => l.Reserved.Sum(r => r.Quantity));
        decimal free = Math.Max(0, onHand - reserved), lacking = Math.Max(0, reserved - onHand);
        decimal wanted = runs.Where(r => StockPicks.StockIds(r).Contains(stock.Id, StringComparer.Ordinal)).Sum(r => Math.Max(0, StockPicks.Needed(r, stock) - own.Sum(l => l.ReservedFor(r.Id))));
        RollOrder? rolls = stock.Kind == StockKind.Roll ? RollOrders.Of(stock, own, runs) : null;
        return new(stock.Id, stock.Name, Unit(stock, onHand), onHand, reserved, free, wanted, stock.ReorderAt,
            rolls?.Metres ?? ToOrder(stock, free - wanted - lacking), own.Count, rolls?.Rolls, rolls?.Words, stock.OrderTo);
    }

    /// <summary>What is counted of a stock, in the number a quantity asks for.</summary>
    public static string Unit(Stock stock, decimal quantity) => stock.Kind switch
    {
        StockKind.Roll => "m",
        StockKind.Blank => quantity == 1 ? "blank" : "blanks",
        _ => quantity == 1 ? "board" : "boards",
    };

    // At the point of reordering or under it: up to the level wanted, at least what runs lack.
    private static decimal ToOrder(Stock stock, decimal left) =>
        stock.ReorderAt is { } point && left <= point ? Math.Max(stock.OrderTo ?? point, point) - left : Math.Max(0, -left);
}
