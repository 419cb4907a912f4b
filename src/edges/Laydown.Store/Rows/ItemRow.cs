namespace Laydown.Store.Rows;

/// <summary>An item as kept. State and run are columns of their own; the JSON repeats them and is written with them.</summary>
internal sealed class ItemRow : IVersioned
{
    public required string Id { get; init; }

    public required string OrderId { get; set; }

    /// <summary>Place in its order from 0.</summary>
    public required int Position { get; set; }

    public required string State { get; set; }

    public string? RunId { get; set; }

    public required string Json { get; set; }

    public long Version { get; set; }
}
