using System.Collections.Concurrent;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Masks;

/// <summary>Long choke of a mask that is mostly bare and full, with soft edges: the same result as <see cref="GreyChoke"/>.</summary>
/// <remarks>
/// The mask is choked twice in two levels: every ink taken as full, and every ink but full taken as bare. Where both agree the grey result is the same,
/// whatever the greys; that leaves a seam along the choked edges for the grey way. On a mask 63 % full with soft edges, in tiles of 256 × 2048, it is
/// twice as fast as the grey way alone for 32 pixels and 6 (256 bits) to 11 times (512) for 85, where little but bare is left (0.6 and 1.0 Gpx/s).
/// </remarks>
/// <param name="twoLevels">The same choke of a mask of two levels.</param>
/// <param name="grey">The same choke of some columns of a row: source, plane, row and columns of the target, target.</param>
/// <param name="widest">About the most columns that are taken at once.</param>
internal sealed class SoftChoke(Action<Tile, Tile, int> twoLevels, Action<Tile, int, int, Range, Tile> grey, int widest)
{
    // Columns looked at together: a seam is narrow, and a register wide.
    private const int Step = 64;

    private readonly ConcurrentBag<Tile> tiles = [];

    public void Run(Tile source, Tile target, int ink)
    {
        Tile levels = Taken(source), any = Taken(target), all = Taken(target);
        Cut(source, ink, levels, 0);
        twoLevels(levels, any, 0);
        Cut(source, ink, levels, Tile.Full - 1);
        twoLevels(levels, all, 0);
        for (int row = 0; row < target.Rows; row++)
        {
            Span<ushort> one = any.Row(0, row), other = all.Row(0, row);
            one.CopyTo(target.Row(ink, row));
            for (int x = one.CommonPrefixLength(other); x < one.Length; x += one[x..].CommonPrefixLength(other[x..]))
            {
                int end = Seam(one, other, x);
                grey(source, ink, row, Math.Max(0, Math.Min(x, end - Step))..end, target);
                x = end;
            }
        }

        tiles.Add(levels);
        tiles.Add(any);
        tiles.Add(all);
    }

    // Goes on as long as the next step has a place where the two differ.
    private int Seam(ReadOnlySpan<ushort> one, ReadOnlySpan<ushort> other, int first)
    {
        int end = Math.Min(one.Length, first + Step);
        while (end < one.Length && end - first < widest)
        {
            int next = Math.Min(one.Length, end + Step);
            if (one[end..next].SequenceEqual(other[end..next]))
                break;
            end = next;
        }

        return end;
    }

    private Tile Taken(Tile like)
    {
        Tile tile = tiles.TryTake(out Tile? kept) ? kept : new(1, 1, 1);
        tile.Shape(1, like.Rows, like.Columns);
        return tile;
    }

    private static void Cut(Tile source, int ink, Tile levels, int over)
    {
        for (int row = 0; row < source.Rows; row++)
            Threshold.Cut(source.Row(ink, row), levels.Row(0, row), (ushort)over, LanesHere.Best);
    }
}
