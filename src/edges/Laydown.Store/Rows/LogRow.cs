namespace Laydown.Store.Rows;

/// <summary>An entry of the log as kept: columns to find it by, the entry itself as JSON, which is never changed.</summary>
internal sealed class LogRow
{
    public long Number { get; init; }

    /// <summary>When it happened, seconds since 1970: what pages are ordered by.</summary>
    public required long AtSeconds { get; init; }

    /// <summary>Its kind; the stop that ends a run is <c>Done</c>.</summary>
    public required string Kind { get; init; }

    public string? RunId { get; init; }

    public required string PressId { get; init; }

    /// <summary>Set once, when a later entry strikes it.</summary>
    public bool Struck { get; set; }

    public required string Json { get; init; }
}
