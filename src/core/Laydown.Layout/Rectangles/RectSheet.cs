using Laydown.Layout.Packing;

namespace Laydown.Layout.Rectangles;

/// <summary>One filled sheet, once or several times over.</summary>
/// <param name="Stock">Index of its stock.</param>
/// <param name="Repeats">How many sheets carry exactly this.</param>
/// <param name="Spots">Where the pieces lie.</param>
/// <param name="Offcuts">Rests worth keeping, none overlapping another.</param>
internal sealed record RectSheet(int Stock, int Repeats, IReadOnlyList<RectSpot> Spots, IReadOnlyList<Box> Offcuts);
