namespace Laydown.Store.Rows;

/// <summary>An order file that was refused, with its faults as JSON.</summary>
internal sealed class RefusedOrderRow : IVersioned
{
    public required string FileName { get; init; }

    public required string Json { get; set; }

    public long Version { get; set; }
}
