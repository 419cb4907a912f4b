namespace Laydown.Shop.Layers;

/// <summary>Colour differences over a picture, ΔE00.</summary>
/// <param name="Mean">Mean.</param>
/// <param name="P95">95th percentile.</param>
/// <param name="Max">Largest.</param>
public sealed record LookDifference(double Mean, double P95, double Max);
