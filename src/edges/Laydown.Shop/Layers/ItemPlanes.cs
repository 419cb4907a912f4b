namespace Laydown.Shop.Layers;

/// <summary>What was written to a file of planes.</summary>
/// <param name="WidthPx">Pixels across.</param>
/// <param name="HeightPx">Pixels down.</param>
/// <param name="Layers">Layers in print order with their planes.</param>
public sealed record ItemPlanes(int WidthPx, int HeightPx, IReadOnlyList<LookedLayer> Layers);
