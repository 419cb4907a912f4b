using Laydown.Instances.Rectangles;

namespace Laydown.Instances.Plates;

/// <summary>What two cuts of the third stage part.</summary>
/// <param name="Left">Left cut.</param>
/// <param name="Right">Right cut.</param>
/// <param name="Placed">None for waste, one, or two one above the other, the lower first.</param>
public sealed record CutCell(int Left, int Right, IReadOnlyList<PlacedRect> Placed);
