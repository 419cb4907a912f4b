using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Scaling;

/// <summary>One new row from some old ones: weighed sums, pairs of rows at a time in whole numbers.</summary>
internal static class DownKernel
{
    private const int Shift = 14, Half = AxisScale.One / 2;

    /// <summary>Fills a row.</summary>
    /// <param name="lanes">How wide.</param>
    /// <param name="rows">Old rows, each <paramref name="stride"/> after the other; the first is the first neighbour.</param>
    /// <param name="stride">Values of a row, a multiple of 32.</param>
    /// <param name="weights">One for each row, an even number.</param>
    /// <param name="line">Takes as many values as the stride.</param>
    public static void Run(Lanes lanes, ReadOnlySpan<short> rows, int stride, ReadOnlySpan<short> weights, Span<short> line)
    {
        if (lanes == Lanes.Wide512)
            Run512(ref MemoryMarshal.GetReference(rows), stride, weights, ref MemoryMarshal.GetReference(line));
        else if (lanes == Lanes.Wide256)
            Run256(ref MemoryMarshal.GetReference(rows), stride, weights, ref MemoryMarshal.GetReference(line));
        else
            Plain(rows, stride, weights, line);
    }

    private static void Plain(ReadOnlySpan<short> rows, int stride, ReadOnlySpan<short> weights, Span<short> line)
    {
        for (int x = 0; x < stride; x++)
        {
            int sum = Half;
            for (int tap = 0; tap < weights.Length; tap++)
                sum += rows[(tap * stride) + x] * weights[tap];
            line[x] = (short)Math.Clamp(sum >> Shift, short.MinValue, short.MaxValue);
        }
    }

    private static void Run512(ref short rows, int stride, ReadOnlySpan<short> weights, ref short line)
    {
        for (int x = 0; x < stride; x += Vector512<short>.Count)
        {
            Vector512<int> low = Vector512.Create(Half), high = low;
            for (int tap = 0; tap < weights.Length; tap += 2)
            {
                Vector512<short> one = Vector512.LoadUnsafe(ref rows, (nuint)((tap * stride) + x));
                Vector512<short> other = Vector512.LoadUnsafe(ref rows, (nuint)(((tap + 1) * stride) + x));
                Vector512<short> pair = Vector512.Create(Pair(weights, tap)).AsInt16();
                low += Avx512BW.MultiplyAddAdjacent(Avx512BW.UnpackLow(one, other), pair);
                high += Avx512BW.MultiplyAddAdjacent(Avx512BW.UnpackHigh(one, other), pair);
            }

            Avx512BW.PackSignedSaturate(low >> Shift, high >> Shift).StoreUnsafe(ref line, (nuint)x);
        }
    }

    private static void Run256(ref short rows, int stride, ReadOnlySpan<short> weights, ref short line)
    {
        for (int x = 0; x < stride; x += Vector256<short>.Count)
        {
            Vector256<int> low = Vector256.Create(Half), high = low;
            for (int tap = 0; tap < weights.Length; tap += 2)
            {
                Vector256<short> one = Vector256.LoadUnsafe(ref rows, (nuint)((tap * stride) + x));
                Vector256<short> other = Vector256.LoadUnsafe(ref rows, (nuint)(((tap + 1) * stride) + x));
                Vector256<short> pair = Vector256.Create(Pair(weights, tap)).AsInt16();
                low += Avx2.MultiplyAddAdjacent(Avx2.UnpackLow(one, other), pair);
                high += Avx2.MultiplyAddAdjacent(Avx2.UnpackHigh(one, other), pair);
            }

            Avx2.PackSignedSaturate(low >> Shift, high >> Shift).StoreUnsafe(ref line, (nuint)x);
        }
    }

    private static int Pair(ReadOnlySpan<short> weights, int tap) => (ushort)weights[tap] | (weights[tap + 1] << 16);
}
