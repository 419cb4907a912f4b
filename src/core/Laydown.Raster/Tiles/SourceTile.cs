namespace Laydown.Raster.Tiles;

/// <summary>Reads a tile of a picture; the picture goes on outside its edges with the values of its edge pixels.</summary>
internal static class SourceTile
{
    /// <summary>Fills all planes of a tile that knows its place and shape.</summary>
    public static void Fill(ITileSource source, Tile tile)
    {
        // Columns that lie on the picture are read, the rest repeat its outermost column.
        int from = Math.Clamp(tile.FirstColumn, 0, source.Columns - 1);
        int to = Math.Clamp(tile.FirstColumn + tile.Columns, from + 1, source.Columns);
        int left = Math.Clamp(from - tile.FirstColumn, 0, tile.Columns - 1);
        int width = Math.Min(to - from, tile.Columns - left);
        for (int ink = 0; ink < tile.Inks; ink++)
        {
            int before = -1;
            for (int row = 0; row < tile.Rows; row++)
            {
                Span<ushort> line = tile.Row(ink, row);
                int wanted = Math.Clamp(tile.FirstRow + row, 0, source.Rows - 1);
                if (wanted == before)
                    tile.Row(ink, row - 1).CopyTo(line);
                else
                    ReadRow(source, ink, wanted, from, line, left, width);
                before = wanted;
            }
        }
    }

    /// <summary>Copies the middle of one tile to another that is larger; what lies outside repeats the edge.</summary>
    /// <param name="inner">A part of the picture.</param>
    /// <param name="tile">Takes it; places of both are set, and <paramref name="inner"/> lies within.</param>
    public static void Extend(Tile inner, Tile tile)
    {
        int left = inner.FirstColumn - tile.FirstColumn, top = inner.FirstRow - tile.FirstRow;
        for (int ink = 0; ink < tile.Inks; ink++)
        {
            for (int row = 0; row < tile.Rows; row++)
            {
                Span<ushort> line = tile.Row(ink, row);
                ReadOnlySpan<ushort> from = inner.Row(ink, Math.Clamp(row - top, 0, inner.Rows - 1));
                from.CopyTo(line[left..]);
                line[..left].Fill(from[0]);
                line[(left + from.Length)..].Fill(from[^1]);
            }
        }
    }

    private static void ReadRow(ITileSource source, int ink, int row, int from, Span<ushort> line, int left, int width)
    {
        source.ReadRow(ink, row, from, line.Slice(left, width));
        line[..left].Fill(line[left]);
        line[(left + width)..].Fill(line[left + width - 1]);
    }
}
