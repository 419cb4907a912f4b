using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
using Laydown.Measures;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Separation;

/// <summary>Brings a row of all inks from 16 to 8 bits without breaking the total ink limit.</summary>
/// <remarks>Measured, six inks, million pixels a second of one core, plain / 256 bits wide: 150 / 2400.</remarks>
public static unsafe class EightBits
{
    /// <summary>8 bits as 16: full stays full.</summary>
    public static ushort Widened(byte value) => (ushort)(value * 257);

    /// <summary>Rounds each ink to the nearest code; where the rounded sum would exceed the limit, all inks of the pixel are rounded down.</summary>
    /// <param name="tile">The values; no pixel over the limit.</param>
    /// <param name="row">Row of the tile.</param>
    /// <param name="limitPercent">Largest sum, percent of one full ink.</param>
    /// <param name="target">Takes inks × columns bytes, ink after ink.</param>
    /// <exception cref="ArgumentException">The target is too short.</exception>
    public static void Narrow(Tile tile, int row, double limitPercent, Span<byte> target) => Narrow(tile, row, limitPercent, target, LanesHere.Best);

    /// <summary>The same at a width of its own; both wide ones take 256 bits.</summary>
    internal static void Narrow(Tile tile, int row, double limitPercent, Span<byte> target, Lanes lanes)
    {
        int columns = tile.Columns;
        if (target.Length < tile.Inks * columns)
            throw new ArgumentException(Invariant($"Target: found {target.Length} bytes; wanted {tile.Inks * columns}."), nameof(target));
        int limit = (int)Math.Floor(Bounds.Within(limitPercent, 0, 6400) * 255 / 100);
        ushort** from = stackalloc ushort*[tile.Inks];
        fixed (ushort* held = tile.Row(0, 0))
        fixed (byte* to = target)
        {
            for (int ink = 0; ink < tile.Inks; ink++)
                from[ink] = (ushort*)Unsafe.AsPointer(ref MemoryMarshal.GetReference(tile.Row(ink, row)));
            int x = 0;
            for (; lanes != Lanes.Plain && x + Vector256<ushort>.Count <= columns; x += Vector256<ushort>.Count)
                Sixteen(from, tile.Inks, x, limit, to + x, columns);
            for (; x < columns; x++)
                Pixel(from, tile.Inks, x, limit, to + x, columns);
        }
    }

    private static void Pixel(ushort** from, int inks, int x, int limit, byte* to, int columns)
    {
        int sum = 0;
        for (int ink = 0; ink < inks; ink++)
            sum += to[ink * columns] = (byte)((from[ink][x] + 128) / 257);
        for (int ink = 0; sum > limit && ink < inks; ink++)
            to[ink * columns] = (byte)(from[ink][x] / 257);
    }

    private static void Sixteen(ushort** from, int inks, int x, int limit, byte* to, int columns)
    {
        Vector256<ushort> sum = Vector256<ushort>.Zero, half = Vector256.Create((ushort)128);
        for (int ink = 0; ink < inks; ink++)
        {
            Vector256<ushort> code = Wholes(Avx2.AddSaturate(Vector256.Load(from[ink] + x), half));
            sum += code;
            Vector128.Narrow(code.GetLower(), code.GetUpper()).Store(to + (ink * columns));
        }

        Vector256<ushort> over = Vector256.GreaterThan(sum, Vector256.Create((ushort)limit));
        for (int ink = 0; over != Vector256<ushort>.Zero && ink < inks; ink++)
        {
            Vector256<ushort> code = Wholes(Avx2.AddSaturate(Vector256.Load(from[ink] + x), Vector256.AndNot(half, over)));
            Vector128.Narrow(code.GetLower(), code.GetUpper()).Store(to + (ink * columns));
        }
    }

    // How many whole 257s: with v = 257 q + r, v − ⌊v / 256⌋ = 256 q + r − ⌊(q + r) / 256⌋, and the last two together are 0 to 255.
    private static Vector256<ushort> Wholes(Vector256<ushort> values) => (values - (values >>> 8)) >>> 8;
}
