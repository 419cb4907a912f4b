using Laydown.Raster.Tiles;

namespace Laydown.Raster.Masks;

/// <summary>Takes ink away where a mask stands: the last plane is the mask and does not come out again.</summary>
/// <remarks>An ink keeps at most full − mask, so an antialiased mask leaves an antialiased edge and a bare mask changes nothing.</remarks>
public sealed class KnockOut : ITileStage
{
    /// <summary>No neighbours needed.</summary>
    public int ReachPixels => 0;

    /// <inheritdoc/>
    public int TargetInks(int sourceInks) => sourceInks >= 2
        ? sourceInks - 1
        : throw new ArgumentException(Invariant($"Planes: found {sourceInks}; wanted an ink and a mask."), nameof(sourceInks));

    /// <inheritdoc/>
    public void Run(Tile source, Tile target)
    {
        for (int row = 0; row < source.Rows; row++)
        {
            ReadOnlySpan<ushort> mask = source.Row(source.Inks - 1, row);
            for (int ink = 0; ink < target.Inks; ink++)
            {
                ReadOnlySpan<ushort> from = source.Row(ink, row);
                Span<ushort> to = target.Row(ink, row);
                for (int x = 0; x < to.Length; x++)
                    to[x] = Math.Min(from[x], (ushort)(Tile.Full - mask[x]));
            }
        }
    }
}
