using Laydown.Raster.Tiles;

namespace Laydown.Raster.Masks;

/// <summary>Choke of a mask that has only bare and full pixels, in time independent of the radius. Own construction, exact.</summary>
/// <remarks>
/// Let g be the vertical distance to the nearest sought pixel (bare for choke, full for spread). A pixel lies within R of one when some pixel of
/// its row, at most w(g) away, sees one straight above or below it, w being the half width of the disc. So each row carries a count
/// that starts at w(g) + 1 and falls by one at each step, from both sides: the pixel is taken where a count is over 0.
/// The plain version: <see cref="WideChoke{TLanes, TVector, TElement}"/> does the same many columns at once.
/// </remarks>
internal sealed class TwoLevelChoke(Disc disc, bool spread)
{
    private readonly ushort sought = spread ? Tile.Full : (ushort)0;

    public void Run(Tile source, Tile target, int ink)
    {
        int far = disc.ReachRows + 1;
        int[] counts = [.. Enumerable.Range(0, far + 1).Select(g => disc.HalfWidth(g) + 1)];
        ushort[] vertical = VerticalDistances(source, target.Rows, ink, (ushort)far);
        bool[] taken = new bool[target.Columns];
        for (int row = 0; row < target.Rows; row++)
        {
            ReadOnlySpan<ushort> g = vertical.AsSpan(row * source.Columns, source.Columns);
            Span<ushort> line = target.Row(ink, row);
            source.Row(ink, row + disc.Reach).Slice(disc.Reach, line.Length).CopyTo(line);
            if (!g.ContainsAnyExcept((ushort)far))
                continue;
            Array.Clear(taken);
            MarkFromBothSides(g, counts, taken);
            for (int x = 0; x < line.Length; x++)
                line[x] = taken[x] ? sought : line[x];
        }
    }

    private ushort[] VerticalDistances(Tile source, int targetRows, int ink, ushort far)
    {
        int columns = source.Columns;
        ushort[] result = new ushort[targetRows * columns];
        ushort[] above = new ushort[columns];
        ushort[] below = new ushort[columns];
        Array.Fill(above, far);
        Array.Fill(below, far);
        for (int row = 0; row < source.Rows; row++)
        {
            Step(source.Row(ink, row), above, far);
            if (row - disc.Reach is >= 0 and int at && at < targetRows)
                above.CopyTo(result.AsSpan(at * columns, columns));
        }

        for (int row = source.Rows - 1; row >= 0; row--)
        {
            Step(source.Row(ink, row), below, far);
            if (row - disc.Reach is >= 0 and int at && at < targetRows)
                TakeLess(result.AsSpan(at * columns, columns), below);
        }

        return result;
    }

    private void Step(ReadOnlySpan<ushort> line, Span<ushort> distance, ushort far)
    {
        for (int x = 0; x < line.Length; x++)
            distance[x] = line[x] == sought ? (ushort)0 : (ushort)Math.Min(distance[x] + 1, far);
    }

    private static void TakeLess(Span<ushort> distances, ReadOnlySpan<ushort> others)
    {
        for (int x = 0; x < others.Length; x++)
            distances[x] = Math.Min(distances[x], others[x]);
    }

    private void MarkFromBothSides(ReadOnlySpan<ushort> vertical, int[] counts, bool[] taken)
    {
        int reach = disc.Reach;
        int count = 0;
        for (int x = 0; x < reach + taken.Length; x++)
        {
            count = Math.Max(count - 1, counts[vertical[x]]);
            if (x >= reach)
                taken[x - reach] = count > 0;
        }

        count = 0;
        for (int x = vertical.Length - 1; x >= reach; x--)
        {
            count = Math.Max(count - 1, counts[vertical[x]]);
            if (x < reach + taken.Length)
                taken[x - reach] |= count > 0;
        }
    }
}
