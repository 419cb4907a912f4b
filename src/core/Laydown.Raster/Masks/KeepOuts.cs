using Laydown.Raster.Tiles;

namespace Laydown.Raster.Masks;

/// <summary>Rectangles of the picture that stay bare of every ink, whatever the mask says.</summary>
/// <remarks>They lie where they lie in the picture: a tile knows its place. Hard edges; ink outside them is untouched.</remarks>
/// <param name="places">The rectangles, in rows and columns of the picture; they may overlap, and reach over its edges.</param>
public sealed class KeepOuts(IReadOnlyList<PixelRect> places) : ITileStage
{
    private readonly PixelRect[] places = [.. places];

    /// <summary>No neighbours needed.</summary>
    public int ReachPixels => 0;

    /// <inheritdoc/>
    public int TargetInks(int sourceInks) => sourceInks;

    /// <inheritdoc/>
    public void Run(Tile source, Tile target)
    {
        for (int ink = 0; ink < source.Inks; ink++)
        {
            for (int row = 0; row < target.Rows; row++)
                source.Row(ink, row).CopyTo(target.Row(ink, row));
            foreach (PixelRect place in places)
                Clear(target, ink, place);
        }
    }

    private static void Clear(Tile tile, int ink, PixelRect place)
    {
        long left = Math.Max(0, (long)place.Left - tile.FirstColumn), right = Math.Min(tile.Columns, (long)place.Left + place.Width - tile.FirstColumn);
        long top = Math.Max(0, (long)place.Top - tile.FirstRow), bottom = Math.Min(tile.Rows, (long)place.Top + place.Height - tile.FirstRow);
        for (long row = top; row < bottom && left < right; row++)
            tile.Row(ink, (int)row)[(int)left..(int)right].Clear();
    }
}
