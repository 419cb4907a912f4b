using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Laydown.Raster.Screens;

/// <summary>Rows of eight blocks to columns of eight lanes, and bits of lanes back to packed rows.</summary>
internal static class DiffusionPacking
{
    /// <summary>Turns eight rows so that the values of a column lie beside each other.</summary>
    /// <param name="rows">Eight rows, one behind the other; their length a multiple of 16.</param>
    /// <param name="columns">Takes them: columns × lanes.</param>
    /// <param name="lanes">Lanes of a column.</param>
    /// <param name="lane">Lane of the first row.</param>
    public static void Turn(ReadOnlySpan<ushort> rows, Span<ushort> columns, int lanes, int lane)
    {
        int width = rows.Length / 8;
        ref ushort from = ref MemoryMarshal.GetReference(rows);
        ref ushort to = ref MemoryMarshal.GetReference(columns);
        if (!Avx2.IsSupported)
        {
            for (int at = 0; at < rows.Length; at++)
                columns[(at % width * lanes) + lane + (at / width)] = rows[at];
            return;
        }

        nuint wide = (nuint)width, step = (nuint)lanes;
        for (int column = 0; column < width; column += 16)
        {
            nuint first = (nuint)column;
            Vector256<ushort> a = Vector256.LoadUnsafe(ref from, first), b = Vector256.LoadUnsafe(ref from, first + wide);
            Vector256<ushort> c = Vector256.LoadUnsafe(ref from, first + (2 * wide)), d = Vector256.LoadUnsafe(ref from, first + (3 * wide));
            Vector256<ushort> e = Vector256.LoadUnsafe(ref from, first + (4 * wide)), f = Vector256.LoadUnsafe(ref from, first + (5 * wide));
            Vector256<ushort> g = Vector256.LoadUnsafe(ref from, first + (6 * wide)), h = Vector256.LoadUnsafe(ref from, first + (7 * wide));

            // Three times: rows four apart are shuffled into each other. Each half of the registers holds its own eight columns.
            (a, b, c, d, e, f, g, h) = Shuffled(a, b, c, d, e, f, g, h);
            (a, b, c, d, e, f, g, h) = Shuffled(a, b, c, d, e, f, g, h);
            (a, b, c, d, e, f, g, h) = Shuffled(a, b, c, d, e, f, g, h);
            nuint at = (first * step) + (nuint)lane;
            Both(a, ref to, at, step);
            Both(b, ref to, at + step, step);
            Both(c, ref to, at + (2 * step), step);
            Both(d, ref to, at + (3 * step), step);
            Both(e, ref to, at + (4 * step), step);
            Both(f, ref to, at + (5 * step), step);
            Both(g, ref to, at + (6 * step), step);
            Both(h, ref to, at + (7 * step), step);
        }
    }

    /// <summary>Gives eight lanes the same row.</summary>
    /// <param name="row">The row.</param>
    /// <param name="columns">Takes it: columns × lanes.</param>
    /// <param name="lanes">Lanes of a column.</param>
    /// <param name="lane">First of the eight.</param>
    public static void Repeat(ReadOnlySpan<ushort> row, Span<ushort> columns, int lanes, int lane)
    {
        ref ushort to = ref MemoryMarshal.GetReference(columns);
        for (int column = 0; column < row.Length; column++)
            Vector128.Create(row[column]).StoreUnsafe(ref to, (nuint)((column * lanes) + lane));
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
    private static (Vector256<ushort>, Vector256<ushort>, Vector256<ushort>, Vector256<ushort>, Vector256<ushort>, Vector256<ushort>, Vector256<ushort>,
        Vector256<ushort>) Shuffled(
        Vector256<ushort> a, Vector256<ushort> b, Vector256<ushort> c, Vector256<ushort> d, Vector256<ushort> e, Vector256<ushort> f, Vector256<ushort> g,
        Vector256<ushort> h) =>
        (Avx2.UnpackLow(a, e), Avx2.UnpackHigh(a, e), Avx2.UnpackLow(b, f), Avx2.UnpackHigh(b, f), Avx2.UnpackLow(c, g), Avx2.UnpackHigh(c, g),
            Avx2.UnpackLow(d, h), Avx2.UnpackHigh(d, h));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Both(Vector256<ushort> values, ref ushort to, nuint at, nuint step)
    {
        values.GetLower().StoreUnsafe(ref to, at);
        values.GetUpper().StoreUnsafe(ref to, at + (8 * step));
    }
}
