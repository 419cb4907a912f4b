using System.Runtime.CompilerServices;
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

    private const int Group = 16, Eightfold = 8, Quad = 4, Shift = 14, Half = AxisScale.One / 2;

    private readonly bool enlarging = columns.TargetPixels >= columns.SourcePixels;
    private int firstTarget = -1, count, firstSource;
    private int[] starts = [];
    private int[] spread = [];
    private int[] shuffles = [];
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
        for (int group = 0; group < Groups; group++)
            Put(group);
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
        if (spread.Length < room)
            (spread, shuffles) = (new int[room], new int[room]);
        if (pairs.Length < room * Pairs)
            pairs = new int[room * Pairs];
    }

    // One group: whole columns first, in straight loops, because this is done for each tile.
    private void Put(int group)
    {
        int width = lanes == Lanes.Wide512 ? Group : Quad, from = group * Group, there = Math.Min(Group, count - from);
        ReadOnlySpan<int> firsts = columns.FirstsOf(firstTarget + from, there);
        ReadOnlySpan<int> weighing = columns.PairsOf(firstTarget + from, there);
        for (int i = 0; i < Group; i += Quad)
            starts[(from + i) / Quad] = firsts[Math.Min(i, there - 1)] - firstSource;
        for (int i = 0; i < Group; i++)
        {
            int at = Math.Min(i, there - 1), offset = firsts[at] - firsts[Math.Min(i - (i % width), there - 1)];
            spread[from + i] = offset | ((offset + 1) << 16);
            shuffles[from + i] = 0x03020100 + (offset * 0x02020202);
        }

        Span<int> group16 = pairs.AsSpan(group * Pairs * Group, Pairs * Group);
        group16.Clear();
        for (int i = 0; i < there; i++)
        {
            for (int pair = 0; pair < Pairs; pair++)
                group16[(pair * Group) + i] = weighing[(i * Pairs) + pair];
        }
    }

    private void Enlarge512(ref short line, ref ushort result)
    {
        ref int spreading = ref MemoryMarshal.GetArrayDataReference(spread);
        ref int weighing = ref MemoryMarshal.GetArrayDataReference(pairs);
        ref int starting = ref MemoryMarshal.GetArrayDataReference(starts);
        int groups = Groups, taps = Pairs;
        for (int group = 0; group < groups; group++)
        {
            Vector512<short> permute = Vector512.LoadUnsafe(ref spreading, (nuint)(group * Group)).AsInt16();
            ref short from = ref Unsafe.Add(ref line, Unsafe.Add(ref starting, group * Quad));
            Vector512<int> sum = Vector512.Create(Half);
            for (int pair = 0; pair < taps; pair++)
            {
                Vector512<short> window = Vector512.LoadUnsafe(ref from, (nuint)(2 * pair));
                Vector512<short> weights = Vector512.LoadUnsafe(ref weighing).AsInt16();
                weighing = ref Unsafe.Add(ref weighing, Group);
                sum += Avx512BW.MultiplyAddAdjacent(Avx512BW.PermuteVar32x16(window, permute), weights);
            }

            RoomyValues.Cut(Avx512F.ConvertToVector256Int16WithSaturation(sum >> Shift)).StoreUnsafe(ref result, (nuint)(group * Group));
        }
    }

    private void Enlarge256(ref short line, ref ushort result)
    {
        ref int weighing = ref MemoryMarshal.GetArrayDataReference(pairs);
        ref int shuffling = ref MemoryMarshal.GetArrayDataReference(shuffles);
        ref int starting = ref MemoryMarshal.GetArrayDataReference(starts);
        int groups = Groups, taps = Pairs;
        for (int group = 0; group < groups; group++)
        {
            Vector256<int> low = Eight(ref line, ref starting, ref shuffling, ref weighing, taps);
            Vector256<int> high = Eight(
                ref line, ref Unsafe.Add(ref starting, 2), ref Unsafe.Add(ref shuffling, Eightfold), ref Unsafe.Add(ref weighing, Eightfold), taps);
            Vector256<short> both = Avx2.Permute4x64(Avx2.PackSignedSaturate(low >> Shift, high >> Shift).AsInt64(), 0b11_01_10_00).AsInt16();
            RoomyValues.Cut(both).StoreUnsafe(ref result, (nuint)(group * Group));
            starting = ref Unsafe.Add(ref starting, Quad);
            shuffling = ref Unsafe.Add(ref shuffling, Group);
            weighing = ref Unsafe.Add(ref weighing, taps * Group);
        }
    }

    // Eight new columns: two quads, each with its own start in its own half.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<int> Eight(ref short line, ref int starting, ref int shuffling, ref int weighing, int taps)
    {
        var shuffle = Vector256.LoadUnsafe(ref shuffling).AsByte();
        ref short first = ref Unsafe.Add(ref line, starting);
        ref short second = ref Unsafe.Add(ref line, Unsafe.Add(ref starting, 1));
        Vector256<int> sum = Vector256.Create(Half);
        for (int pair = 0; pair < taps; pair++)
        {
            Vector256<short> window = Vector256.Create(Vector128.LoadUnsafe(ref first, (nuint)(2 * pair)), Vector128.LoadUnsafe(ref second, (nuint)(2 * pair)));
            Vector256<short> weights = Vector256.LoadUnsafe(ref weighing, (nuint)(pair * Group)).AsInt16();
            sum += Avx2.MultiplyAddAdjacent(Avx2.Shuffle(window.AsByte(), shuffle).AsInt16(), weights);
        }

        return sum;
    }
}
