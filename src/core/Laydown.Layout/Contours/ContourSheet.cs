namespace Laydown.Layout.Contours;

/// <summary>One board, or the strip, with what lies on it.</summary>
/// <param name="StockId">Which stock; null for the strip.</param>
/// <param name="Spots">What lies on it.</param>
public sealed record ContourSheet(string? StockId, IReadOnlyList<ContourSpot> Spots);
