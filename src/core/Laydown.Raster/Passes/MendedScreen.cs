using System.Collections.Concurrent;
using Laydown.Raster.Screens;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Passes;

/// <summary>A screen before which missing nozzles are made good: it asks for a wider margin and screens what <see cref="NozzleMend"/> made of the tile.</summary>
/// <remarks>Works on tiles of the whole sheet, where rows belong to nozzles. Only scratch is kept between tiles.</remarks>
/// <param name="mend">Makes good.</param>
/// <param name="screen">Screens.</param>
public sealed class MendedScreen(NozzleMend mend, ILayerScreen screen) : ILayerScreen
{
    private readonly ConcurrentBag<Tile> scratch = [];

    /// <inheritdoc/>
    public int Inks => screen.Inks;

    /// <inheritdoc/>
    public int BitsPerDot => screen.BitsPerDot;

    /// <inheritdoc/>
    public int ReachPixels => screen.ReachPixels + mend.ReachPixels;

    /// <inheritdoc/>
    public int GridPixels => screen.GridPixels;

    /// <inheritdoc/>
    public void Run(Tile tile, int rows, int columns, DotRows target, int targetFirstColumn)
    {
        Tile mended = scratch.TryTake(out Tile? kept) ? kept : new(tile.Inks, 1, 1);
        mended.Shape(tile.Inks, rows + (2 * screen.ReachPixels), columns + (2 * screen.ReachPixels));
        mended.PlaceAt(tile.FirstRow + mend.ReachPixels, tile.FirstColumn + mend.ReachPixels);
        mend.Run(tile, mended);
        screen.Run(mended, rows, columns, target, targetFirstColumn);
        scratch.Add(mended);
    }
}
