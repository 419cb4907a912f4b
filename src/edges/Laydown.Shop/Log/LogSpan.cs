namespace Laydown.Shop.Log;

/// <summary>A part of the log.</summary>
/// <param name="PressId">One press; null for all.</param>
/// <param name="From">From this instant; null for the beginning.</param>
/// <param name="To">Before this instant; null for the end.</param>
public sealed record LogSpan(string? PressId = null, DateTimeOffset? From = null, DateTimeOffset? To = null);
