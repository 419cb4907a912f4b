using Laydown.Raster.Tiles;

namespace Laydown.Output.PressFiles;

/// <summary>Hands each tile to two sinks.</summary>
/// <param name="one">Takes it first.</param>
/// <param name="other">Takes it then.</param>
internal sealed class BothPlanes(ITileSink one, ITileSink other) : ITileSink
{
    /// <inheritdoc/>
    public void Take(int firstRow, int firstColumn, Tile tile)
    {
        one.Take(firstRow, firstColumn, tile);
        other.Take(firstRow, firstColumn, tile);
    }
}
