namespace Laydown.Layout.Hands;

/// <summary>A sheet under a person's hands.</summary>
/// <param name="Repeats">How many sheets carry exactly this picture; at least 1.</param>
/// <param name="Spots">What lies on it; may be empty.</param>
public sealed record HandSheet(int Repeats, IReadOnlyList<HandSpot> Spots);
