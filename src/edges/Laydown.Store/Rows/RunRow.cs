namespace Laydown.Store.Rows;

/// <summary>A run as kept.</summary>
internal sealed class RunRow : IVersioned
{
    public required string Id { get; init; }

    public required string State { get; set; }

    public required DateOnly Due { get; set; }

    public required string Json { get; set; }

    public long Version { get; set; }
}
