using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Scaling;

/// <summary>New columns from a line of old values: for a group of new columns one window of old ones, spread by a permute, weighed in pairs.</summary>
/// <remarks>
/// Enlarging, sixteen new columns need at most seventeen neighbouring starts: one register of 32 values holds them all (AVX2: four columns and eight values in each half).
/// Reducing, each new column weighs many old ones: they are taken sixteen at a time.
/// </remarks>
internal sealed class AcrossPlan(AxisScale columns, Lanes lanes)
{
    /// <summary>Old values that may be read behind a start.</summary>
    public const int Window = 32;

    private const int Group = 16, Quad = 4, Shift = 14, Half = AxisScale.One / 2;

    private readonly bool enlarging = columns.TargetPixels >= columns.SourcePixels;
    private int firstTarget = -1, count, firstSource;
    private int[] starts = [];
    private short[] spread = [];
    private byte[] shuffles = [];
    private int[] pairs = [];

    /// <summary>Values the result must have room for.</summary>
    public int Room => Groups * Group;

    private int Groups => (count + Group - 1) / Group;

    private int Pairs => columns.Taps / 2;

    /// <summary>Prepares for some new columns.</summary>
    public void Take(int first, int wanted)
    {
        if (first == firstTarget && wanted == count)
            return;
        (firstTarget, count) = (first, wanted);
        firstSource = columns.FirstOf(first);
        if (lanes == Lanes.Plain || !enlarging)
            return;
        Fit();
        for (int x = 0; x < Groups * Group; x++)
            Put(x);
    }

    /// <summary>Makes the new columns of a line.</summary>
    /// <param name="line">Old values from the first that is needed; readable some way past the last.</param>
    /// <param name="result">Takes the new values, and beyond them what rounding up to whole groups adds.</param>
    public void Run(ReadOnlySpan<short> line, Span<ushort> result)
    {
        if (enlarging && lanes == Lanes.Wide512)
            Enlarge512(ref MemoryMarshal.GetReference(line), ref MemoryMarshal.GetReference(result));
        else if (enlarging && lanes == Lanes.Wide256)
            Enlarge256(ref MemoryMarshal.GetReference(line), ref MemoryMarshal.GetReference(result));
        else
            Plain(line, result);
    }

    private void Plain(ReadOnlySpan<short> line, Span<ushort> result)
    {
        for (int x = 0; x < count; x++)
        {
            ReadOnlySpan<short> weights = columns.WeightsOf(firstTarget + x), from = line[(columns.FirstOf(firstTarget + x) - firstSource)..];
            result[x] = RoomyValues.Cut((lanes == Lanes.Plain ? Sum(from, weights) : SumWide(from, weights)) >> Shift);
        }
    }

    private static int Sum(ReadOnlySpan<short> from, ReadOnlySpan<short> weights)
    {
        int sum = Half;
        for (int tap = 0; tap < weights.Length; tap++)
            sum += from[tap] * weights[tap];
        return sum;
    }

    private static int SumWide(ReadOnlySpan<short> from, ReadOnlySpan<short> weights)
    {
        int tap = 0;
        Vector256<int> sums = Vector256<int>.Zero;
        for (; tap + Vector256<short>.Count <= weights.Length; tap += Vector256<short>.Count)
            sums += Avx2.MultiplyAddAdjacent(Vector256.Create(from[tap..]), Vector256.Create(weights[tap..]));
        return Vector256.Sum(sums) + Sum(from[tap..], weights[tap..]);
    }

    // A start, a permute and weights for a group; columns past the last repeat it with no weight.
    private void Fit()
    {
        int room = Groups * Group;
        if (starts.Length < room / Quad)
            starts = new int[room / Quad];
        if (spread.Length < room * 2)
            (spread, shuffles) = (new short[room * 2], new byte[room * 4]);
        if (pairs.Length < room * Pairs)
            pairs = new int[room * Pairs];
    }

    private void Put(int x)
    {
        int target = firstTarget + Math.Min(x, count - 1), width = lanes == Lanes.Wide512 ? Group : Quad;
        int leader = firstTarget + Math.Min(x - (x % width), count - 1);
        int offset = columns.FirstOf(target) - columns.FirstOf(leader);
        if (x % Quad == 0)
            starts[x / Quad] = columns.FirstOf(firstTarget + Math.Min(x, count - 1)) - firstSource;
        (spread[2 * x], spread[(2 * x) + 1]) = ((short)offset, (short)(offset + 1));
        for (int b = 0; b < 4; b++)
            shuffles[(4 * x) + b] = (byte)((2 * offset) + b);
        ReadOnlySpan<short> weights = columns.WeightsOf(target);
        for (int pair = 0; pair < Pairs; pair++)
        {
            int both = (ushort)weights[2 * pair] | (weights[(2 * pair) + 1] << 16);
            pairs[((((x / Group) * Pairs) + pair) * Group) + (x % Group)] = x < count ? both : 0;
        }
    }

    private void Enlarge512(ref short line, ref ushort result)
    {
        ref short spreading = ref MemoryMarshal.GetArrayDataReference(spread);
        ref int weighing = ref MemoryMarshal.GetArrayDataReference(pairs);
        for (int group = 0; group < Groups; group++)
        {
            Vector512<short> permute = Vector512.LoadUnsafe(ref spreading, (nuint)(group * 2 * Group));
            Vector512<int> sum = Vector512.Create(Half);
            for (int pair = 0; pair < Pairs; pair++)
            {
                Vector512<short> window = Vector512.LoadUnsafe(ref line, (nuint)(starts[group * Quad] + (2 * pair)));
                Vector512<short> weights = Vector512.LoadUnsafe(ref weighing, (nuint)(((group * Pairs) + pair) * Group)).AsInt16();
                sum += Avx512BW.MultiplyAddAdjacent(Avx512BW.PermuteVar32x16(window, permute), weights);
            }

            RoomyValues.Cut(Avx512F.ConvertToVector256Int16WithSaturation(sum >> Shift)).StoreUnsafe(ref result, (nuint)(group * Group));
        }
    }

    private void Enlarge256(ref short line, ref ushort result)
    {
        ref int weighing = ref MemoryMarshal.GetArrayDataReference(pairs);
        for (int group = 0; group < Groups; group++)
        {
            Vector256<int> low = Eight(ref line, ref weighing, group, 0), high = Eight(ref line, ref weighing, group, 2);
            Vector256<short> both = Avx2.Permute4x64(Avx2.PackSignedSaturate(low >> Shift, high >> Shift).AsInt64(), 0b11_01_10_00).AsInt16();
            RoomyValues.Cut(both).StoreUnsafe(ref result, (nuint)(group * Group));
        }
    }

    // Eight new columns: two quads, each with its own start in its own half.
    private Vector256<int> Eight(ref short line, ref int weighing, int group, int quad)
    {
        int at = (group * Quad) + quad;
        Vector256<byte> shuffle = Vector256.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(shuffles), (nuint)(at * 16));
        Vector256<int> sum = Vector256.Create(Half);
        for (int pair = 0; pair < Pairs; pair++)
        {
            Vector256<short> window = Vector256.Create(
                Vector128.LoadUnsafe(ref line, (nuint)(starts[at] + (2 * pair))), Vector128.LoadUnsafe(ref line, (nuint)(starts[at + 1] + (2 * pair))));
            Vector256<short> weights = Vector256.LoadUnsafe(ref weighing, (nuint)((((group * Pairs) + pair) * Group) + (quad * Quad))).AsInt16();
            sum += Avx2.MultiplyAddAdjacent(Avx2.Shuffle(window.AsByte(), shuffle).AsInt16(), weights);
        }

        return sum;
    }
}
