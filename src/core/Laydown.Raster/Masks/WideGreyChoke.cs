using System.Buffers;
using System.Runtime.CompilerServices;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Masks;

/// <summary>Choke of any mask, many columns at once; the same result as <see cref="GreyChoke"/>.</summary>
/// <remarks>
/// From the middle row of the disc outward its rows get narrower. So the extreme is taken row by row: widened sideways by as much as the row before is
/// wider than this one, then joined with the two rows this far above and below; what is widened later counts for all rows taken before. The width of the
/// disc is so paid once and not for each of its rows. Strips in which nothing changes within the disc's height and width are filled.
/// On a mask 63 % full, in tiles of 256 × 2048, it is 60 times as fast as the plain way for 8 pixels (0.9 Gpx/s) and 90 times for 85 (0.09 Gpx/s).
/// </remarks>
internal sealed class WideGreyChoke<TLanes, TVector, TExtreme>(Disc disc)
    where TLanes : INumberLanes<TVector, ushort>
    where TVector : struct
    where TExtreme : struct, IExtreme
{
    // Wide enough that the margins to its sides are no more than half of the work.
    private readonly int strip = Math.Max(256, 4 * disc.ReachColumns);

    /// <summary>Columns that are taken together.</summary>
    public int Widest => strip;

    /// <summary>Some columns of one row of the target.</summary>
    public void Part(Tile source, int ink, int row, Range columns, Tile target)
    {
        (int first, int width) = columns.GetOffsetAndLength(target.Columns);
        int span = width + (2 * disc.ReachColumns);
        ushort[] rented = ArrayPool<ushort>.Shared.Rent(2 * span);
        OneRow(source, ink, row + disc.Reach, first + disc.Reach - disc.ReachColumns, rented.AsSpan(0, span), rented.AsSpan(span, span), target.Row(ink, row).Slice(first, width));
        ArrayPool<ushort>.Shared.Return(rented);
    }

    public void Run(Tile source, Tile target, int ink)
    {
        // Parts of a register at the right end are taken by a whole one that ends there, so there must be one.
        if (target.Columns < TLanes.Count)
        {
            new GreyChoke(disc, TExtreme.Greatest).Run(source, target, ink);
            return;
        }

        ushort[] rented = ArrayPool<ushort>.Shared.Rent(2 * (strip + TLanes.Count + (2 * disc.ReachColumns)));
        for (int first = 0; first < target.Columns; first += strip)
        {
            // A last strip under a register's width starts further left; what it does again comes out the same.
            int width = Math.Min(strip, target.Columns - first);
            int start = width < TLanes.Count ? target.Columns - TLanes.Count : first;
            Strip(source, target, ink, start, Math.Max(width, TLanes.Count), rented);
        }

        ArrayPool<ushort>.Shared.Return(rented);
    }

    private void Strip(Tile source, Tile target, int ink, int first, int width, ushort[] rented)
    {
        int left = first + disc.Reach - disc.ReachColumns, span = width + (2 * disc.ReachColumns), alike = 0;
        ushort before = 0;
        Span<ushort> one = rented.AsSpan(0, span), other = rented.AsSpan(span, span);
        int above = disc.Reach - disc.ReachRows;
        for (int row = above; row < source.Rows - above; row++)
        {
            // Count the rows that hold one value alone, the same in all of them.
            ReadOnlySpan<ushort> line = source.Row(ink, row).Slice(left, span);
            alike = line.ContainsAnyExcept(line[0]) ? 0 : alike > 0 && line[0] == before ? alike + 1 : 1;
            before = line[0];
            int at = row - above - (2 * disc.ReachRows);
            if (at < 0)
                continue;
            Span<ushort> into = target.Row(ink, at).Slice(first, width);
            if (alike > 2 * disc.ReachRows)
                into.Fill(before);
            else
                OneRow(source, ink, at + disc.Reach, left, one, other, into);
        }
    }

    private void OneRow(Tile source, int ink, int middle, int left, Span<ushort> one, Span<ushort> other, Span<ushort> into)
    {
        source.Row(ink, middle).Slice(left, one.Length).CopyTo(one);
        int taken = 0;
        for (int away = 1; away <= disc.ReachRows; away++)
        {
            int wider = disc.HalfWidth(away - 1) - disc.HalfWidth(away);
            for (; wider > 1; wider--)
            {
                Widen(one, other, ++taken);
                Swap(ref one, ref other);
            }

            ref ushort above = ref source.Row(ink, middle - away)[left], below = ref source.Row(ink, middle + away)[left];
            if (wider == 0)
            {
                Join(ref one[0], ref above, ref below, taken, one.Length - taken);
                continue;
            }

            taken++;
            WidenAndJoin(ref one[0], ref above, ref below, ref other[0], taken, one.Length - taken);
            Swap(ref one, ref other);
        }

        for (int wider = disc.HalfWidth(disc.ReachRows); wider > 0; wider--)
        {
            Widen(one, other, ++taken);
            Swap(ref one, ref other);
        }

        one.Slice(disc.ReachColumns, into.Length).CopyTo(into);
    }

    // The extreme with the columns to both sides.
    private static void Widen(Span<ushort> from, Span<ushort> to, int first)
    {
        ref ushort source = ref from[0], target = ref to[0];
        for (int x = first, end = from.Length - first; x < end; x += TLanes.Count)
        {
            int at = Math.Min(x, end - TLanes.Count);
            TLanes.Store(Three(ref source, at), ref Unsafe.Add(ref target, at));
        }
    }

    private static void Join(ref ushort kept, ref ushort above, ref ushort below, int first, int end)
    {
        for (int x = first; x < end; x += TLanes.Count)
        {
            int at = Math.Min(x, end - TLanes.Count);
            TVector own = TLanes.Load(ref Unsafe.Add(ref kept, at));
            TLanes.Store(TExtreme.Of<TLanes, TVector>(own, Both(ref above, ref below, at)), ref Unsafe.Add(ref kept, at));
        }
    }

    private static void WidenAndJoin(ref ushort source, ref ushort above, ref ushort below, ref ushort target, int first, int end)
    {
        for (int x = first; x < end; x += TLanes.Count)
        {
            int at = Math.Min(x, end - TLanes.Count);
            TLanes.Store(TExtreme.Of<TLanes, TVector>(Three(ref source, at), Both(ref above, ref below, at)), ref Unsafe.Add(ref target, at));
        }
    }

    private static TVector Three(ref ushort from, int at) => TExtreme.Of<TLanes, TVector>(
        TLanes.Load(ref Unsafe.Add(ref from, at)),
        TExtreme.Of<TLanes, TVector>(TLanes.Load(ref Unsafe.Add(ref from, at - 1)), TLanes.Load(ref Unsafe.Add(ref from, at + 1))));

    private static TVector Both(ref ushort above, ref ushort below, int at) =>
        TExtreme.Of<TLanes, TVector>(TLanes.Load(ref Unsafe.Add(ref above, at)), TLanes.Load(ref Unsafe.Add(ref below, at)));

    private static void Swap(ref Span<ushort> one, ref Span<ushort> other)
    {
        Span<ushort> kept = one;
        one = other;
        other = kept;
    }
}
