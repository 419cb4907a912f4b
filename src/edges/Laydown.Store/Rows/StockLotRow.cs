namespace Laydown.Store.Rows;

/// <summary>A lot of the stock room as kept.</summary>
internal sealed class StockLotRow : IVersioned
{
    public required string Id { get; init; }

    public required string StockId { get; set; }

    public required string Place { get; set; }

    public required string Json { get; set; }

    public long Version { get; set; }
}
