using Laydown.Measures;
using Laydown.Plan.StockRoom;
using Laydown.Press.Stocks;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Press;

/// <summary>Sets from when on a stock is ordered, and up to how much.</summary>
/// <param name="catalogue">What the shop has.</param>
/// <param name="room">Keeps the points.</param>
/// <param name="clock">Tells the time.</param>
public sealed class SetReorderPoint(Catalogue catalogue, IStockRoom room, TimeProvider clock)
{
    /// <summary>Sets it in place of the one before, and of what the stock's file says.</summary>
    /// <param name="wish">The stock, the point, and who sets it.</param>
    /// <param name="cancellation">Stops before saving.</param>
    /// <returns>The point as kept, or every fault.</returns>
    public async Task<Reading<ReorderPoint>> SetAsync(ReorderWish wish, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(wish);
        IReadOnlyList<InputFault> faults = [.. Faults(wish)];
        if (faults.Count > 0)
            return Reading.Refused<ReorderPoint>(faults);
        ReorderPoint point = new(wish.StockId, wish.At, wish.To, wish.By.Trim(), clock.GetUtcNow());
        await room.SetPointAsync(point, cancellation);
        (catalogue.Stocks as ShelvedStocks)?.Follow(await room.PointsAsync(CancellationToken.None));
        return Reading.Of(point);
    }

    private IEnumerable<InputFault> Faults(ReorderWish wish)
    {
        IReadOnlyList<Stock> described = (catalogue.Stocks as ShelvedStocks)?.Described ?? catalogue.Stocks;
        if (described.All(s => !string.Equals(s.Id, wish.StockId, StringComparison.Ordinal)))
            yield return Fault("stockId", Invariant($"'{wish.StockId}'"), "one of " + string.Join(", ", described.Select(s => s.Id)));
        if (wish.At is < 0 or > ReorderPoint.Most)
            yield return Fault("at", Invariant($"{wish.At}"), Invariant($"0 to {ReorderPoint.Most}, or nothing where nobody watches"));
        if (wish.To is { } to && wish.At is null)
            yield return Fault("to", Invariant($"{to} without a point"), "a point to order at, or nothing");
        else if (wish.To is > ReorderPoint.Most || wish.To <= wish.At)
            yield return Fault("to", Invariant($"{wish.To}"), Invariant($"over {wish.At}, the point to order at, to {ReorderPoint.Most}"));
        if (string.IsNullOrWhiteSpace(wish.By) || wish.By.Length > 100)
            yield return Fault("by", Invariant($"{wish.By?.Length ?? 0} signs"), "who sets it, 1 to 100 signs");
    }

    private static InputFault Fault(string field, string found, string wanted) => new("stock room", null, field, found, wanted);
}
