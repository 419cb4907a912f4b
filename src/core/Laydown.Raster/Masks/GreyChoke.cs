using Laydown.Raster.Tiles;

namespace Laydown.Raster.Masks;

/// <summary>Choke of any mask: for each row of the disc the extreme within a sliding window, in constant time for each pixel and row.</summary>
internal sealed class GreyChoke(Disc disc, bool spread)
{
    public void Run(Tile source, Tile target, int ink)
    {
        ushort[] forward = new ushort[source.Columns];
        ushort[] backward = new ushort[source.Columns];
        for (int row = 0; row < target.Rows; row++)
        {
            Span<ushort> line = target.Row(ink, row);
            line.Fill(spread ? (ushort)0 : Tile.Full);
            for (int dy = -disc.ReachRows; dy <= disc.ReachRows; dy++)
                SlideOver(source.Row(ink, row + disc.Reach + dy), disc.HalfWidth(Math.Abs(dy)), line, forward, backward);
        }
    }

    // Blocks of one window's length: running extremes from each block's start and from its end.
    // Any window is the end part of one block and the start part of the next, so two values give its extreme.
    private void SlideOver(ReadOnlySpan<ushort> from, int half, Span<ushort> line, ushort[] forward, ushort[] backward)
    {
        int window = (2 * half) + 1;
        for (int x = 0; x < from.Length; x++)
            forward[x] = x % window == 0 ? from[x] : Extreme(forward[x - 1], from[x]);
        for (int x = from.Length - 1; x >= 0; x--)
            backward[x] = x == from.Length - 1 || (x + 1) % window == 0 ? from[x] : Extreme(backward[x + 1], from[x]);
        for (int x = 0; x < line.Length; x++)
        {
            int centre = x + disc.Reach;
            line[x] = Extreme(line[x], Extreme(backward[centre - half], forward[centre + half]));
        }
    }

    private ushort Extreme(ushort one, ushort other) => spread ? Math.Max(one, other) : Math.Min(one, other);
}
