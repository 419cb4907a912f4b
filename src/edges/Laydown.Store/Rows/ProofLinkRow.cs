namespace Laydown.Store.Rows;

/// <summary>A proof link as kept.</summary>
internal sealed class ProofLinkRow : IVersioned
{
    public required string Id { get; init; }

    public required string ItemId { get; set; }

    public required string Json { get; set; }

    public long Version { get; set; }
}
