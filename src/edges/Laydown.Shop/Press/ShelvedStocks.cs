using System.Collections;
using Laydown.Plan.StockRoom;
using Laydown.Press.Stocks;

namespace Laydown.Shop.Press;

/// <summary>The stocks of an open shop with what stands in its room: a catalogue's list that follows the room.</summary>
/// <remarks>Whoever counts or walks it sees the room of one moment; a change in the room is seen by the next who does.</remarks>
public sealed class ShelvedStocks : IReadOnlyList<Stock>
{
    private volatile IReadOnlyList<Stock> now;

    /// <summary>Stocks with an empty room.</summary>
    /// <param name="described">Stocks as the shop describes them.</param>
    public ShelvedStocks(IReadOnlyList<Stock> described) => Described = now = described;

    /// <summary>Stocks as the shop describes them, whatever the room holds.</summary>
    public IReadOnlyList<Stock> Described { get; }

    /// <inheritdoc/>
    public int Count => now.Count;

    /// <inheritdoc/>
    public Stock this[int index] => now[index];

    /// <summary>From now on the room holds these lots.</summary>
    public void Follow(IReadOnlyList<StockLot> lots) => now = StockShelf.Of(Described, lots);

    /// <inheritdoc/>
    public IEnumerator<Stock> GetEnumerator() => now.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
