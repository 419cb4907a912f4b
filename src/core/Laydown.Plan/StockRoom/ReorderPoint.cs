using Laydown.Press.Stocks;

namespace Laydown.Plan.StockRoom;

/// <summary>From when on a stock is ordered, as set in the shop; it stands in place of what the stock's file says.</summary>
/// <param name="StockId">The stock.</param>
/// <param name="At">What must be free, or more is ordered: boards or blanks, of a roll metres; 0 or more, null where nobody watches.</param>
/// <param name="To">Up to how much is ordered then; over <paramref name="At"/>, null for the point itself.</param>
/// <param name="By">Who set it.</param>
/// <param name="Since">When.</param>
public sealed record ReorderPoint(string StockId, int? At, int? To, string By, DateTimeOffset Since)
{
    /// <summary>Most that can be asked for: what a lot can hold.</summary>
    public const int Most = (int)StockMoves.Most;

    /// <summary>Stocks with the points set in the shop in place of those of their files.</summary>
    /// <param name="described">Stocks as their files say.</param>
    /// <param name="points">Points, each stock once; those of stocks that are gone are passed over.</param>
    public static IReadOnlyList<Stock> On(IReadOnlyList<Stock> described, IReadOnlyList<ReorderPoint> points)
    {
        if (points.Count == 0)
            return described;
        Dictionary<string, ReorderPoint> set = points.ToDictionary(p => p.StockId, StringComparer.Ordinal);
        return [.. described.Select(s => set.TryGetValue(s.Id, out ReorderPoint? point) ? s with { ReorderAt = point.At, OrderTo = point.To } : s)];
    }
}
