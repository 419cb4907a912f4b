namespace Laydown.Store.Rows;

/// <summary>An order as kept: columns to find it by, the record itself as JSON.</summary>
internal sealed class OrderRow : IVersioned
{
    public required string Id { get; init; }

    public required DateOnly Received { get; set; }

    public required string Json { get; set; }

    public long Version { get; set; }
}
