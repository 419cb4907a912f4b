using System.IO.Compression;

namespace Laydown.Output.Pyramids;

/// <summary>One row of tiles of a level, filled from the top and then packed.</summary>
/// <param name="layout">Sizes.</param>
/// <param name="level">The level.</param>
internal sealed class PyramidRows(PyramidLayout layout, int level)
{
    private readonly int columns = layout.Shape.ColumnsAt(level);
    private byte[] codes = [];
    private int held;

    /// <summary>Takes a row; rows come in ascending order.</summary>
    /// <param name="row">Row of the level.</param>
    /// <param name="line">Ink after ink.</param>
    /// <returns>Whether the row of tiles is now whole.</returns>
    public bool Take(int row, ReadOnlySpan<byte> line)
    {
        if (codes.Length == 0)
            codes = new byte[layout.Inks * PyramidFile.TilePx * columns];
        int within = row % PyramidFile.TilePx;
        for (int ink = 0; ink < layout.Inks; ink++)
            line.Slice(ink * columns, columns).CopyTo(codes.AsSpan(((ink * PyramidFile.TilePx) + within) * columns));
        held = within + 1;
        return held == PyramidFile.TilePx || row == layout.Shape.RowsAt(level) - 1;
    }

    /// <summary>The tiles; bytes are null where all codes are equal.</summary>
    public IEnumerable<(int Ink, int Column, byte[]? Packed, byte Code)> Packed()
    {
        for (int ink = 0; ink < layout.Inks; ink++)
        {
            for (int column = 0; column < layout.Across(level); column++)
            {
                byte[] tile = Tile(ink, column);
                bool even = tile.AsSpan().IndexOfAnyExcept(tile[0]) < 0;
                yield return (ink, column, even ? null : Zip(tile), tile[0]);
            }
        }
    }

    private byte[] Tile(int ink, int column)
    {
        int left = column * PyramidFile.TilePx, wide = Math.Min(PyramidFile.TilePx, columns - left);
        byte[] tile = new byte[wide * held];
        for (int y = 0; y < held; y++)
            codes.AsSpan((((ink * PyramidFile.TilePx) + y) * columns) + left, wide).CopyTo(tile.AsSpan(y * wide));
        return tile;
    }

    private static byte[] Zip(byte[] tile)
    {
        using MemoryStream packed = new();
        using (ZLibStream zip = new(packed, CompressionLevel.Fastest))
            zip.Write(tile);
        return packed.ToArray();
    }
}
