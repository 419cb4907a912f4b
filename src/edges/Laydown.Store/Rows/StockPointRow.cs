namespace Laydown.Store.Rows;

/// <summary>From when on a stock is ordered, as set in the shop.</summary>
internal sealed class StockPointRow : IVersioned
{
    public required string StockId { get; init; }

    public required string Json { get; set; }

    public long Version { get; set; }
}
