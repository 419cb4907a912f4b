using Laydown.Measures;
using Laydown.Press.Stocks;

namespace Laydown.Plan.StockRoom;

/// <summary>The stocks planning takes from: what the shop describes, with what stands in the room; offcuts as other sizes of their boards.</summary>
/// <remarks>
/// A stock of which the room holds no lot keeps the count of its description. A rest is worth half its share of the board's area (common practice, no source), so that it is taken first where it fits.
/// </remarks>
public static class StockShelf
{
    /// <summary>Worth of a rest as a share of its area of a new board, percent (common practice, no source).</summary>
    public const double RestWorthPercent = 50;

    // A board sawn to size differs by less than this from what its label says.
    private const double SameMm = 0.5;

    /// <summary>The stocks, described ones first in their order, then offcuts by name.</summary>
    /// <param name="described">Stocks as the shop describes them.</param>
    /// <param name="lots">The room; empty ones too, so that an offcut that was used up is still known by name.</param>
    public static IReadOnlyList<Stock> Of(IReadOnlyList<Stock> described, IReadOnlyList<StockLot> lots)
    {
        if (lots.Count == 0)
            return described;
        List<Stock> stocks = [.. described.Select(s => Counted(s, lots))];

        // A size the shop describes itself, such as an offcut with a file of its own, is counted there.
        Dictionary<string, Stock> boards = described.Where(s => s.OtherSizeOf is null).ToDictionary(s => s.Id, StringComparer.Ordinal);
        foreach (IGrouping<string, StockLot> rests in lots.Where(l => l.Kind == StockKind.Board && !described.Any(s => (s.OtherSizeOf ?? s.Id) == l.StockId && IsSize(l, s)))
            .GroupBy(RestId).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            StockLot rest = rests.First();
            if (boards.TryGetValue(rest.StockId, out Stock? board))
                stocks.Add(Rest(board, rest, rests.Key, rests.Sum(l => l.Free)));
        }

        return stocks;
    }

    /// <summary>Whether a lot has the size of a stock, either way round where the stock has no grain.</summary>
    public static bool IsSize(StockLot lot, Stock stock) =>
        stock.Kind == StockKind.Roll
            ? Near(lot.WidthMm, stock.WidthMm)
            : (Near(lot.WidthMm, stock.WidthMm) && Near(lot.LengthMm, stock.LengthMm)) || (Near(lot.WidthMm, stock.LengthMm) && Near(lot.LengthMm, stock.WidthMm) && stock.Grain == GrainDirection.None);

    /// <summary>Name of a rest as a stock: its board's and its size.</summary>
    public static string RestId(StockLot lot) => Invariant($"{lot.StockId}-{lot.WidthMm:0}-{lot.LengthMm:0}");

    private static Stock Counted(Stock stock, IReadOnlyList<StockLot> lots)
    {
        List<StockLot> own = [.. StockPicks.OfSize(stock, lots)];
        return own.Count == 0 ? stock : stock with { OnHand = (int)Math.Floor(own.Sum(l => l.Free)) };
    }

    private static Stock Rest(Stock board, StockLot lot, string id, decimal free) => board with
    {
        Id = id,
        Name = Invariant($"{board.Name}, offcut {lot.WidthMm:0} × {lot.LengthMm:0} mm"),
        WidthMm = lot.WidthMm,
        LengthMm = lot.LengthMm,
        Price = Money.FromUnits((double)board.Price.Units * lot.WidthMm * lot.LengthMm / (board.WidthMm * board.LengthMm) * RestWorthPercent / 100),
        OnHand = (int)Math.Floor(free),
        OtherSizeOf = board.Id,
        ReorderAt = null,
        OrderTo = null,
    };

    private static bool Near(double one, double other) => Math.Abs(one - other) < SameMm;
}
