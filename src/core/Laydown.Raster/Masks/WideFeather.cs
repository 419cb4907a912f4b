using System.Buffers;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Masks;

/// <summary>Feather of squared distances that fit 16 bits, many columns at once; the same result as <see cref="PlainFeather"/>.</summary>
/// <remarks>
/// The squared distance is the least of (w k)² + (h g)² over the columns k away, tried outward until no column can be nearer. Columns with no
/// sought pixel in reach are passed over. Scratch: two bytes for each pixel of the target and its margin to the sides.
/// On a mask 63 % full, in tiles of 256 × 2048 and for 32 pixels, it is 14 times as fast as the plain way with 512 bits and 10 times with
/// 256 (0.69, 0.48 and 0.05 Gpx/s).
/// </remarks>
internal sealed class WideFeather<TLanes, TVector>(Disc disc, Ramp ramp, PixelShape shape, bool inward)
    where TLanes : IDistanceLanes<TVector>
    where TVector : struct
{
    private readonly int far = disc.ReachRows + 1;

    public void Run(Tile source, Tile target, int ink)
    {
        int padded = ColumnSweep<TLanes, TVector, ushort>.Padded(source.Columns), margin = disc.Reach + (2 * TLanes.Count);
        ushort[] near = ArrayPool<ushort>.Shared.Rent((target.Rows + 1) * padded);
        ushort[] rented = ArrayPool<ushort>.Shared.Rent(padded + margin);
        Span<ushort> squares = rented.AsSpan(0, padded + margin);
        squares[padded..].Fill(ushort.MaxValue);
        ColumnSweep<TLanes, TVector, ushort> sweep = new(far, inward ? (ushort)0 : Tile.Full);
        sweep.FromAbove(source, ink, disc.Reach, near.AsSpan(0, (target.Rows + 1) * padded));
        Span<ushort> below = near.AsSpan(target.Rows * padded, padded);
        below.Fill((ushort)far);
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

        ArrayPool<ushort>.Shared.Return(near);
        ArrayPool<ushort>.Shared.Return(rented);
    }

    /// <summary>Turns vertical distances into their squares, far away into the largest number; whether any is near.</summary>
    private bool Squares(Span<ushort> above, Span<ushort> below, Span<ushort> squares)
    {
        TVector most = TLanes.All(far), height = TLanes.All(shape.Height), any = TLanes.All(0);
        for (int x = 0; x < above.Length; x += TLanes.Count)
        {
            TVector distance = TLanes.Least(TLanes.Load(ref above[x]), TLanes.Load(ref below[x]));
            TVector left = TLanes.Subtract(most, distance), side = TLanes.Multiply(distance, height);
            any = TLanes.Greatest(any, left);
            TLanes.Store(TLanes.Greatest(TLanes.Multiply(side, side), TLanes.WhereZero(left)), ref squares[x]);
        }

        return !TLanes.IsZero(any);
    }

    private void Finish(Span<ushort> squares, Span<ushort> into)
    {
        Span<ushort> found = stackalloc ushort[TLanes.Count];
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
            Allow(found, into[x..Math.Min(into.Length, x + TLanes.Count)]);
        }
    }

    private static int NearFrom(Span<ushort> squares, int first)
    {
        int steps = squares[first..].IndexOfAnyExcept(ushort.MaxValue);
        return steps < 0 ? int.MaxValue : first + steps;
    }

    /// <summary>Least squared distance of a register's columns, at most the one from which all is allowed.</summary>
    /// <param name="left">Square of the column as far to the left of the first as the reach.</param>
    /// <param name="full">The most.</param>
    private TVector Nearest(ref ushort left, TVector full)
    {
        int reach = disc.ReachColumns;
        TVector nearest = TLanes.Least(Sideways(ref left, reach), full);
        if (TLanes.IsZero(nearest))
            return nearest;
        for (int k = 1; k <= reach; k++)
        {
            TVector away = TLanes.All(k * shape.Width * k * shape.Width);
            TVector either = TLanes.Least(Sideways(ref left, reach - k), Sideways(ref left, reach + k));
            nearest = TLanes.Least(nearest, TLanes.Add(either, away));

            // Columns further off cannot be nearer than they are far off.
            if (k % 4 == 0 && TLanes.IsZero(TLanes.Subtract(nearest, away)))
                break;
        }

        return nearest;
    }

    private static TVector Sideways(ref ushort left, int columns) => TLanes.Load(ref Unsafe.Add(ref left, columns));

    private void Allow(Span<ushort> squares, Span<ushort> values)
    {
        ref ushort allowed = ref MemoryMarshal.GetReference(ramp.Table);
        for (int x = 0; x < squares.Length; x++)
            squares[x] = Unsafe.Add(ref allowed, squares[x]);
        if (values.Length == TLanes.Count)
        {
            TVector most = TLanes.Load(ref squares[0]), value = TLanes.Load(ref values[0]);
            TLanes.Store(inward ? TLanes.Least(value, most) : TLanes.Greatest(value, TLanes.Xor(most, TLanes.All(-1))), ref values[0]);
            return;
        }

        for (int x = 0; x < values.Length; x++)
            values[x] = inward ? Math.Min(values[x], squares[x]) : Math.Max(values[x], (ushort)(Tile.Full - squares[x]));
    }
}
