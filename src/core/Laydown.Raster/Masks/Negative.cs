using Laydown.Raster.Tiles;

namespace Laydown.Raster.Masks;

/// <summary>Reads a mask the other way round: full where it was bare, bare where it was full; greys keep their distance.</summary>
/// <remarks>Twice is the mask itself, exactly. A choke after it draws the ink in and so widens the windows.</remarks>
public sealed class Negative : ITileStage
{
    /// <summary>No neighbours needed.</summary>
    public int ReachPixels => 0;

    /// <inheritdoc/>
    public int TargetInks(int sourceInks) => sourceInks;

    /// <inheritdoc/>
    public void Run(Tile source, Tile target)
    {
        for (int ink = 0; ink < source.Inks; ink++)
        {
            for (int row = 0; row < source.Rows; row++)
            {
                ReadOnlySpan<ushort> from = source.Row(ink, row);
                Span<ushort> to = target.Row(ink, row);
                for (int x = 0; x < to.Length; x++)
                    to[x] = (ushort)(Tile.Full - from[x]);
            }
        }
    }
}
