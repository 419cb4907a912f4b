namespace Laydown.Store.Rows;

/// <summary>What was last read and done at a press, as kept.</summary>
internal sealed class PressCareRow : IVersioned
{
    public required string PressId { get; init; }

    public required string Json { get; set; }

    public long Version { get; set; }
}
