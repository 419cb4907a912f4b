using Laydown.Layout.Packing;

namespace Laydown.Layout.Plates;

/// <summary>A pane on a plate.</summary>
/// <param name="Item">Index of its item.</param>
/// <param name="Place">Where it lies.</param>
/// <param name="Turned">Whether it lies turned.</param>
internal readonly record struct PlateSpot(int Item, Box Place, bool Turned);
