using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Laydown.Raster.Screens;

/// <summary>Rows of eight blocks to columns of eight lanes, and bits of lanes back to packed rows.</summary>
internal static class DiffusionPacking
{
    /// <summary>Turns eight rows so that the values of a column lie beside each other.</summary>
    /// <param name="rows">Eight rows, one behind the other; their length a multiple of 8.</param>
    /// <param name="columns">Takes them: columns × lanes.</param>
    /// <param name="lanes">Lanes of a column.</param>
    /// <param name="lane">Lane of the first row.</param>
    public static void Turn(ReadOnlySpan<ushort> rows, Span<ushort> columns, int lanes, int lane)
    {
        int width = rows.Length / 8;
        ref ushort from = ref MemoryMarshal.GetReference(rows);
        ref ushort to = ref MemoryMarshal.GetReference(columns);
        for (int column = 0; column < width; column += 8)
        {
            Vector128<ushort> a = Vector128.LoadUnsafe(ref from, (nuint)column), b = Vector128.LoadUnsafe(ref from, (nuint)(column + width));
            Vector128<ushort> c = Vector128.LoadUnsafe(ref from, (nuint)(column + (2 * width))), d = Vector128.LoadUnsafe(ref from, (nuint)(column + (3 * width)));
            Vector128<ushort> e = Vector128.LoadUnsafe(ref from, (nuint)(column + (4 * width))), f = Vector128.LoadUnsafe(ref from, (nuint)(column + (5 * width)));
            Vector128<ushort> g = Vector128.LoadUnsafe(ref from, (nuint)(column + (6 * width))), h = Vector128.LoadUnsafe(ref from, (nuint)(column + (7 * width)));

            // Three times: rows four apart are shuffled into each other.
            (a, b, c, d, e, f, g, h) = Shuffled(a, b, c, d, e, f, g, h);
            (a, b, c, d, e, f, g, h) = Shuffled(a, b, c, d, e, f, g, h);
            (a, b, c, d, e, f, g, h) = Shuffled(a, b, c, d, e, f, g, h);
            nuint at = (nuint)((column * lanes) + lane), step = (nuint)lanes;
            a.StoreUnsafe(ref to, at);
            b.StoreUnsafe(ref to, at + step);
            c.StoreUnsafe(ref to, at + (2 * step));
            d.StoreUnsafe(ref to, at + (3 * step));
            e.StoreUnsafe(ref to, at + (4 * step));
            f.StoreUnsafe(ref to, at + (5 * step));
            g.StoreUnsafe(ref to, at + (6 * step));
            h.StoreUnsafe(ref to, at + (7 * step));
        }
    }

    /// <summary>Packs a row of dots of all blocks.</summary>
    /// <param name="kernel">Has just done the row.</param>
    /// <param name="batch">Its blocks, a lane each.</param>
    /// <param name="row">Row of the blocks.</param>
    /// <param name="target">Takes the dots.</param>
    /// <param name="firstColumn">Column of the target for the tile's first.</param>
    public static void Store(DiffusionKernel kernel, DiffusionUnit[] batch, int row, DotRows target, int firstColumn)
    {
        int bits = target.BitsPerDot;
        Span<ulong> low = stackalloc ulong[DiffusionScreen.Block / 8], high = stackalloc ulong[DiffusionScreen.Block / 8];
        high.Clear();
        for (int group = 0; group < batch.Length; group += 8)
        {
            for (int at = 0; at < low.Length; at++)
            {
                low[at] = Lanes(kernel.Low, (at * 8) + DiffusionScreen.Margin, group);
                if (bits == 2)
                    high[at] = Lanes(kernel.High, (at * 8) + DiffusionScreen.Margin, group);
            }

            for (int lane = 0; lane < 8 && group + lane < batch.Length; lane++)
            {
                DiffusionUnit unit = batch[group + lane];
                Span<byte> line = target.Row(unit.Ink, unit.Row + row)[((firstColumn + unit.Column) * bits / 8)..];
                Put(low, high, lane * 8, unit.Columns, bits, line);
            }
        }
    }

    // One block's row: whole bytes, then a last one filled up with 0.
    private static void Put(ReadOnlySpan<ulong> low, ReadOnlySpan<ulong> high, int shift, int columns, int bits, Span<byte> target)
    {
        for (int at = 0; at * 8 < columns; at++)
        {
            int rest = columns - (at * 8);
            int wanted = rest >= 8 ? 0xFF : 0xFF << (8 - rest);
            int lower = (int)(low[at] >> shift) & wanted & 0xFF;
            if (bits == 1)
            {
                target[at] = (byte)lower;
                continue;
            }

            int both = Spread(lower) | (Spread((int)(high[at] >> shift) & wanted & 0xFF) << 1);
            target[2 * at] = (byte)(both >> 8);
            if (rest > 4)
                target[(2 * at) + 1] = (byte)both;
        }
    }

    private static int Spread(int bits)
    {
        bits = (bits | (bits << 4)) & 0x0F0F;
        bits = (bits | (bits << 2)) & 0x3333;
        return (bits | (bits << 1)) & 0x5555;
    }

    // Eight columns of eight lanes: a byte for each lane, first column in the highest bit.
    private static ulong Lanes(uint[] words, int column, int lane)
    {
        ulong square = 0;
        for (int at = 0; at < 8; at++)
            square = (square << 8) | (byte)(words[column + at] >> lane);

        // Bits mirrored at the diagonal: squares of 1, 2, 4.
        ulong swap = (square ^ (square >> 7)) & 0x00AA00AA00AA00AA;
        square ^= swap ^ (swap << 7);
        swap = (square ^ (square >> 14)) & 0x0000CCCC0000CCCC;
        square ^= swap ^ (swap << 14);
        swap = (square ^ (square >> 28)) & 0x00000000F0F0F0F0;
        return square ^ swap ^ (swap << 28);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (Vector128<ushort>, Vector128<ushort>, Vector128<ushort>, Vector128<ushort>, Vector128<ushort>, Vector128<ushort>, Vector128<ushort>,
        Vector128<ushort>) Shuffled(
        Vector128<ushort> a, Vector128<ushort> b, Vector128<ushort> c, Vector128<ushort> d, Vector128<ushort> e, Vector128<ushort> f, Vector128<ushort> g,
        Vector128<ushort> h) =>
        (Sse2.UnpackLow(a, e), Sse2.UnpackHigh(a, e), Sse2.UnpackLow(b, f), Sse2.UnpackHigh(b, f), Sse2.UnpackLow(c, g), Sse2.UnpackHigh(c, g),
            Sse2.UnpackLow(d, h), Sse2.UnpackHigh(d, h));
}
