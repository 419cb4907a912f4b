using System.Buffers;
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Masks;

/// <summary>Feather of squared distances that fit 16 or 30 bits, many columns at once; the same result as <see cref="PlainFeather"/>.</summary>
/// <remarks>
/// The squared distance is the least of (w k)² + (h g)² over the columns k away, tried outward until no column can be nearer. Columns with no
/// sought pixel in reach are passed over. Scratch: one number for each pixel of the target and its margin to the sides.
/// On a mask 63 % full, in tiles of 256 × 2048 and for 32 pixels, it is 12 times as fast as the plain way with 512 bits and 9 times with
/// 256 (0.67, 0.51 and 0.054 Gpx/s); for 283 pixels, in 30 bits, 21 and 15 times (0.39, 0.28 and 0.018 Gpx/s).
/// </remarks>
internal sealed class WideFeather<TLanes, TVector, TElement>(Disc disc, Ramp ramp, PixelShape shape, bool inward)
    where TLanes : IDistanceLanes<TVector, TElement>
    where TVector : struct
    where TElement : unmanaged, INumberBase<TElement>
{
    private static readonly TElement Far = TElement.CreateChecked(TLanes.Most);

    private readonly int far = disc.ReachRows + 1;

    public void Run(Tile source, Tile target, int ink)
    {
        int padded = ColumnSweep<TLanes, TVector, TElement>.Padded(source.Columns), margin = disc.Reach + (2 * TLanes.Count);
        TElement[] near = ArrayPool<TElement>.Shared.Rent((target.Rows + 1) * padded);
        TElement[] rented = ArrayPool<TElement>.Shared.Rent(padded + margin);
        Span<TElement> squares = rented.AsSpan(0, padded + margin);
        squares[padded..].Fill(Far);
        ColumnSweep<TLanes, TVector, TElement> sweep = new(far, inward ? (ushort)0 : Tile.Full);
        sweep.FromAbove(source, ink, disc.Reach, near.AsSpan(0, (target.Rows + 1) * padded));
        Span<TElement> below = near.AsSpan(target.Rows * padded, padded);
        below.Fill(TElement.CreateChecked(far));
        for (int row = source.Rows - 1; row >= disc.Reach; row--)
        {
            sweep.Step(source.Row(ink, row), below, below);
            if (row - disc.Reach >= target.Rows)
                continue;
            Span<ushort> into = target.Row(ink, row - disc.Reach);
            source.Row(ink, row).Slice(disc.Reach, into.Length).CopyTo(into);
            if (Squares(near.AsSpan((row - disc.Reach) * padded, padded), below, squares))
                Finish(squares, into);
        }

        ArrayPool<TElement>.Shared.Return(near);
        ArrayPool<TElement>.Shared.Return(rented);
    }

    /// <summary>Turns vertical distances into their squares, far away into the largest number; whether any is near.</summary>
    private bool Squares(Span<TElement> above, Span<TElement> below, Span<TElement> squares)
    {
        TVector most = TLanes.All(far), height = TLanes.All(shape.Height), largest = TLanes.All(TLanes.Most), any = TLanes.All(0);
        for (int x = 0; x < above.Length; x += TLanes.Count)
        {
            TVector distance = TLanes.Least(TLanes.Load(ref above[x]), TLanes.Load(ref below[x]));
            TVector left = TLanes.Subtract(most, distance), side = TLanes.Multiply(distance, height);
            any = TLanes.Greatest(any, left);
            TLanes.Store(TLanes.Greatest(TLanes.Multiply(side, side), TLanes.And(TLanes.WhereZero(left), largest)), ref squares[x]);
        }

        return !TLanes.IsZero(any);
    }

    private void Finish(Span<TElement> squares, Span<ushort> into)
    {
        Span<TElement> found = stackalloc TElement[TLanes.Count];
        Span<ushort> allowed = stackalloc ushort[TLanes.Count];
        TVector full = TLanes.All((int)ramp.FullFrom);
        int nextNear = -1;
        for (int x = 0; x < into.Length; x += TLanes.Count)
        {
            // A stretch with nothing near in its reach is left as it is, and so is one that is sought throughout.
            int first = x + disc.Reach - disc.ReachColumns, end = x + disc.Reach + TLanes.Count + disc.ReachColumns;
            if (nextNear < first)
                nextNear = NearFrom(squares, first);
            if (nextNear >= end)
                continue;
            TVector nearest = Nearest(ref squares[x + disc.Reach - disc.ReachColumns], full);
            if (TLanes.IsZero(nearest) || TLanes.IsZero(TLanes.Subtract(full, nearest)))
                continue;
            TLanes.Store(nearest, ref found[0]);
            Allow(found, allowed, into[x..Math.Min(into.Length, x + TLanes.Count)]);
        }
    }

    private static int NearFrom(Span<TElement> squares, int first)
    {
        int steps = squares[first..].IndexOfAnyExcept(Far);
        return steps < 0 ? int.MaxValue : first + steps;
    }

    /// <summary>Least squared distance of a register's columns, at most the one from which all is allowed.</summary>
    /// <param name="left">Square of the column as far to the left of the first as the reach.</param>
    /// <param name="full">The most.</param>
    private TVector Nearest(ref TElement left, TVector full)
    {
        int reach = disc.ReachColumns;
        TVector nearest = TLanes.Least(Sideways(ref left, reach), full);
        if (TLanes.IsZero(nearest))
            return nearest;
        // Squares of whole numbers grow by 1, 3, 5 … times the square of a pixel's width.
        int unit = shape.Width * shape.Width;
        TVector away = TLanes.All(0), grows = TLanes.All(unit), twice = TLanes.All(2 * unit);
        for (int k = 1; k <= reach; k++)
        {
            away = TLanes.Add(away, grows);
            grows = TLanes.Add(grows, twice);
            TVector either = TLanes.Least(Sideways(ref left, reach - k), Sideways(ref left, reach + k));
            nearest = TLanes.Least(nearest, TLanes.Add(either, away));

            // Columns further off cannot be nearer than they are far off.
            if (k % 4 == 0 && TLanes.IsZero(TLanes.Subtract(nearest, away)))
                break;
        }

        return nearest;
    }

    private static TVector Sideways(ref TElement left, int columns) => TLanes.Load(ref Unsafe.Add(ref left, columns));

    private void Allow(ReadOnlySpan<TElement> squares, Span<ushort> allowed, Span<ushort> values)
    {
        ref ushort table = ref MemoryMarshal.GetReference(ramp.Table);
        for (int x = 0; x < squares.Length; x++)
            allowed[x] = Unsafe.Add(ref table, int.CreateTruncating(squares[x]));
        int done = 0;
        for (; done <= values.Length - Vector128<ushort>.Count; done += Vector128<ushort>.Count)
        {
            Vector128<ushort> value = Vector128.Create<ushort>(values[done..]), most = Vector128.Create<ushort>(allowed[done..]);
            (inward ? Vector128.Min(value, most) : Vector128.Max(value, ~most)).CopyTo(values[done..]);
        }

        for (; done < values.Length; done++)
            values[done] = inward ? Math.Min(values[done], allowed[done]) : Math.Max(values[done], (ushort)(Tile.Full - allowed[done]));
    }
}
