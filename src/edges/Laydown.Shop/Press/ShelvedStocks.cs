using System.Collections;
using Laydown.Plan.StockRoom;
using Laydown.Press.Stocks;

namespace Laydown.Shop.Press;

/// <summary>The stocks of an open shop with what stands in its room: a catalogue's list that follows the room.</summary>
/// <remarks>Whoever counts or walks it sees the room of one moment; a change in the room is seen by the next who does.</remarks>
public sealed class ShelvedStocks : IReadOnlyList<Stock>
{
    private readonly Lock gate = new();
    private readonly IReadOnlyList<Stock> files;
    private IReadOnlyList<StockLot> room = [];
    private volatile IReadOnlyList<Stock> described;
    private volatile IReadOnlyList<Stock> now;

    /// <summary>Stocks with an empty room.</summary>
    /// <param name="described">Stocks as the shop describes them.</param>
    public ShelvedStocks(IReadOnlyList<Stock> described) => files = this.described = now = described;

    /// <summary>Stocks as the shop describes them, with the points of ordering it set, whatever the room holds.</summary>
    public IReadOnlyList<Stock> Described => described;

    /// <inheritdoc/>
    public int Count => now.Count;

    /// <inheritdoc/>
    public Stock this[int index] => now[index];

    /// <summary>From now on the room holds these lots.</summary>
    public void Follow(IReadOnlyList<StockLot> lots)
    {
        lock (gate)
            now = StockShelf.Of(described, room = lots);
    }

    /// <summary>From now on these points of ordering hold.</summary>
    public void Follow(IReadOnlyList<ReorderPoint> points)
    {
        lock (gate)
        {
            described = ReorderPoint.On(files, points);
            now = StockShelf.Of(described, room);
        }
    }

    /// <inheritdoc/>
    public IEnumerator<Stock> GetEnumerator() => now.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
