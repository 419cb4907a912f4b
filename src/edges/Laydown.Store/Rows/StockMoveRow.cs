namespace Laydown.Store.Rows;

/// <summary>What was done in the stock room, as kept. The number counts up in the order it was done; rows are never changed.</summary>
internal sealed class StockMoveRow : IVersioned
{
    public long Number { get; init; }

    public required string LotId { get; init; }

    public string? RunId { get; init; }

    public required string Json { get; init; }

    public long Version { get; set; }
}
