using Laydown.Raster.Tiles;

namespace Laydown.Raster.Masks;

/// <summary>The whole piece at full, whatever the picture.</summary>
public sealed class Flood : ITileStage
{
    /// <summary>No neighbours needed.</summary>
    public int ReachPixels => 0;

    /// <summary>One plane.</summary>
    public int TargetInks(int sourceInks) => 1;

    /// <inheritdoc/>
    public void Run(Tile source, Tile target)
    {
        for (int row = 0; row < target.Rows; row++)
            target.Row(0, row).Fill(Tile.Full);
    }
}
