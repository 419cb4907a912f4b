using Laydown.Measures;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Masks;

/// <summary>Full wherever any plane of the picture has ink over a threshold, bare elsewhere.</summary>
/// <param name="thresholdPercent">Ink that still counts as none, percent of full laydown, 0 to 100.</param>
public sealed class UnderImage(double thresholdPercent) : ITileStage
{
    private readonly ushort threshold = (ushort)(Bounds.Within(thresholdPercent, 0, 100) * Tile.Full / 100);

    /// <summary>No neighbours needed.</summary>
    public int ReachPixels => 0;

    /// <summary>One plane.</summary>
    public int TargetInks(int sourceInks) => 1;

    /// <inheritdoc/>
    public void Run(Tile source, Tile target)
    {
        for (int row = 0; row < source.Rows; row++)
        {
            Span<ushort> mask = target.Row(0, row);
            mask.Clear();
            for (int ink = 0; ink < source.Inks; ink++)
            {
                ReadOnlySpan<ushort> line = source.Row(ink, row);
                for (int x = 0; x < line.Length; x++)
                    mask[x] = line[x] > threshold ? Tile.Full : mask[x];
            }
        }
    }
}
