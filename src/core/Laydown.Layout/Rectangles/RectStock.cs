using Laydown.Layout.Packing;

namespace Laydown.Layout.Rectangles;

/// <summary>One size of sheet, or one offcut.</summary>
/// <param name="Id">Its name.</param>
/// <param name="Width">Usable width, grown as the pieces are; µm or the unit of the problem.</param>
/// <param name="Height">Usable height, grown likewise.</param>
/// <param name="Copies">How many there are; null for as many as wanted.</param>
/// <param name="Cost">What one costs; any unit, the same for all.</param>
/// <param name="KeepOuts">Places where no piece may lie: clamps, damage, locked pieces; may overlap each other.</param>
internal sealed record RectStock(string Id, int Width, int Height, int? Copies, double Cost, IReadOnlyList<Box> KeepOuts)
{
    internal long Area => (long)Width * Height;
}
