using Laydown.Measures;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Separation;

/// <summary>Brings a row of all inks from 16 to 8 bits without breaking the total ink limit.</summary>
public static class EightBits
{
    /// <summary>8 bits as 16: full stays full.</summary>
    public static ushort Widened(byte value) => (ushort)(value * 257);

    /// <summary>Rounds each ink to the nearest code; where the rounded sum would exceed the limit, all inks of the pixel are rounded down.</summary>
    /// <param name="tile">The values; no pixel over the limit.</param>
    /// <param name="row">Row of the tile.</param>
    /// <param name="limitPercent">Largest sum, percent of one full ink.</param>
    /// <param name="target">Takes inks × columns bytes, ink after ink.</param>
    /// <exception cref="ArgumentException">The target is too short.</exception>
    public static void Narrow(Tile tile, int row, double limitPercent, Span<byte> target)
    {
        int columns = tile.Columns;
        if (target.Length < tile.Inks * columns)
            throw new ArgumentException(Invariant($"Target: found {target.Length} bytes; wanted {tile.Inks * columns}."), nameof(target));
        int limit = (int)Math.Floor(Bounds.Within(limitPercent, 0, 6400) * 255 / 100);
        int[] sum = new int[columns];
        for (int ink = 0; ink < tile.Inks; ink++)
        {
            ReadOnlySpan<ushort> line = tile.Row(ink, row);
            Span<byte> bytes = target.Slice(ink * columns, columns);
            for (int x = 0; x < columns; x++)
            {
                bytes[x] = (byte)((line[x] + 128) / 257);
                sum[x] += bytes[x];
            }
        }

        for (int x = 0; x < columns; x++)
        {
            for (int ink = 0; sum[x] > limit && ink < tile.Inks; ink++)
                target[(ink * columns) + x] = (byte)(tile.Row(ink, row)[x] / 257);
        }
    }
}
