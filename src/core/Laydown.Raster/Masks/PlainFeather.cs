using Laydown.Raster.Tiles;

namespace Laydown.Raster.Masks;

/// <summary>Feather by the exact distance to the nearest sought pixel, one pixel after the other. [Meijster2000]</summary>
/// <remarks>
/// Each column knows its nearest sought pixel above and below. Seen along a row these are parabolas w² (x − i)² + (h g(i))²; the lowest of them at x is the
/// squared distance. A scan to the right keeps those that are lowest somewhere and from which column on, a scan back reads them. Whole numbers throughout.
/// </remarks>
internal sealed class PlainFeather(Disc disc, Ramp ramp, PixelShape shape, bool inward)
{
    private readonly ushort sought = inward ? (ushort)0 : Tile.Full;

    public void Run(Tile source, Tile target, int ink)
    {
        int[] near = Vertical(source, target.Rows, ink);
        int[] site = new int[source.Columns];
        int[] from = new int[source.Columns];
        for (int row = 0; row < target.Rows; row++)
        {
            ReadOnlySpan<int> g = near.AsSpan(row * source.Columns, source.Columns);
            ReadOnlySpan<ushort> values = source.Row(ink, row + disc.Reach).Slice(disc.Reach, target.Columns);
            Span<ushort> into = target.Row(ink, row);
            int sites = g.IndexOfAnyInRange(0, disc.ReachRows) < 0 ? 0 : Lowest(g, site, from);
            if (sites == 0)
            {
                values.CopyTo(into);
                continue;
            }

            for (int x = target.Columns - 1; x >= 0; x--)
            {
                while (sites > 1 && from[sites - 1] > x + disc.Reach)
                    sites--;
                ushort allowed = ramp.Of(Across(x + disc.Reach - site[sites - 1]) + Down(g[site[sites - 1]]));
                into[x] = inward ? Math.Min(values[x], allowed) : Math.Max(values[x], (ushort)(Tile.Full - allowed));
            }
        }
    }

    private long Across(long columns) => columns * shape.Width * columns * shape.Width;

    private long Down(long rows) => rows * shape.Height * rows * shape.Height;

    // Columns whose parabola is lowest somewhere, and the first column where it is.
    private int Lowest(ReadOnlySpan<int> g, int[] site, int[] from)
    {
        int sites = 0;
        for (int x = 0; x < g.Length; x++)
        {
            if (g[x] > disc.ReachRows)
                continue;
            long first = 0;
            while (sites > 0 && (first = Crossing(g, site[sites - 1], x)) <= from[sites - 1])
                sites--;
            if (sites == 0)
                first = 0;
            if (first >= g.Length)
                continue;
            (site[sites], from[sites]) = (x, (int)first);
            sites++;
        }

        return sites;
    }

    /// <summary>The first column at which the right one of two parabolas is no higher than the left one.</summary>
    private long Crossing(ReadOnlySpan<int> g, int left, int right)
    {
        long above = Across(right) - Across(left) + Down(g[right]) - Down(g[left]);
        long twice = 2L * shape.Width * shape.Width * (right - left);
        return Math.Max(0, (above + twice - 1) / twice);
    }

    private int[] Vertical(Tile source, int targetRows, int ink)
    {
        int columns = source.Columns;
        int[] near = new int[targetRows * columns];
        int[] gone = new int[columns];
        Array.Fill(gone, disc.ReachRows + 1);
        for (int row = 0; row < disc.Reach + targetRows; row++)
        {
            Step(source.Row(ink, row), gone);
            if (row >= disc.Reach)
                gone.CopyTo(near.AsSpan((row - disc.Reach) * columns, columns));
        }

        Array.Fill(gone, disc.ReachRows + 1);
        for (int row = source.Rows - 1; row >= disc.Reach; row--)
        {
            Step(source.Row(ink, row), gone);
            if (row - disc.Reach >= targetRows)
                continue;
            Span<int> line = near.AsSpan((row - disc.Reach) * columns, columns);
            for (int x = 0; x < columns; x++)
                line[x] = Math.Min(line[x], gone[x]);
        }

        return near;
    }

    private void Step(ReadOnlySpan<ushort> line, int[] gone)
    {
        for (int x = 0; x < line.Length; x++)
            gone[x] = line[x] == sought ? 0 : Math.Min(gone[x] + 1, disc.ReachRows + 1);
    }
}
