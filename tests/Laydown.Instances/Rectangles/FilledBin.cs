namespace Laydown.Instances.Rectangles;

/// <summary>A filled board.</summary>
/// <param name="Bin">Index of its kind.</param>
/// <param name="Repeats">How many boards carry exactly this.</param>
/// <param name="Placed">What lies on it.</param>
public sealed record FilledBin(int Bin, int Repeats, IReadOnlyList<PlacedRect> Placed);
