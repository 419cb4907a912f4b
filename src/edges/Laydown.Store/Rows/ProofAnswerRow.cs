namespace Laydown.Store.Rows;

/// <summary>A customer's answer as kept. The number counts up in the order answers came.</summary>
internal sealed class ProofAnswerRow : IVersioned
{
    public long Number { get; init; }

    public required string Id { get; init; }

    public required string LinkId { get; init; }

    public required string ItemId { get; init; }

    /// <summary>When it came, seconds since 1970: what answers are counted by.</summary>
    public required long AtSeconds { get; init; }

    public required string Json { get; set; }

    public long Version { get; set; }
}
