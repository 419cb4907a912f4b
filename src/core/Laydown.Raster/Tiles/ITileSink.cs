namespace Laydown.Raster.Tiles;

/// <summary>Takes finished tiles: a file, a sum.</summary>
public interface ITileSink
{
    /// <summary>Takes one tile; the tile is used again afterwards, so what is to be kept must be copied.</summary>
    /// <param name="firstRow">Row of the picture that the tile's first row is.</param>
    /// <param name="firstColumn">Column of the picture that the tile's first column is.</param>
    /// <param name="tile">The values.</param>
    void Take(int firstRow, int firstColumn, Tile tile);
}
