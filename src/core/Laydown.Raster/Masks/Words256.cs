using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Laydown.Raster.Masks;

/// <summary>16 numbers of 16 bits by AVX2, for distances that no byte holds.</summary>
internal readonly struct Words256 : IMaskLanes<Vector256<ushort>, ushort>, IDistanceLanes<Vector256<ushort>, ushort>
{
    public static int Count => 16;

    public static int Most => ushort.MaxValue;

    public static Vector256<ushort> Rising => Vector256.Create((ushort)1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16);

    public static Vector256<ushort> Falling => Vector256.Create((ushort)16, 15, 14, 13, 12, 11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1);

    public static Vector256<ushort> All(int value) => Vector256.Create((ushort)value);

    public static Vector256<ushort> Load(ref ushort from) => Vector256.LoadUnsafe(ref from);

    public static void Store(Vector256<ushort> vector, ref ushort to) => vector.StoreUnsafe(ref to);

    public static Vector256<ushort> Others(ref ushort from, ushort sought) =>
        ~Vector256.Equals(Vector256.LoadUnsafe(ref from), Vector256.Create(sought));

    public static void Widen(Vector256<ushort> vector, ref ushort to) => vector.StoreUnsafe(ref to);

    public static Vector256<ushort> Add(Vector256<ushort> one, Vector256<ushort> other) => Avx2.AddSaturate(one, other);

    public static Vector256<ushort> Subtract(Vector256<ushort> one, Vector256<ushort> other) => Avx2.SubtractSaturate(one, other);

    public static Vector256<ushort> Least(Vector256<ushort> one, Vector256<ushort> other) => Avx2.Min(one, other);

    public static Vector256<ushort> Greatest(Vector256<ushort> one, Vector256<ushort> other) => Avx2.Max(one, other);

    public static Vector256<ushort> And(Vector256<ushort> one, Vector256<ushort> other) => one & other;

    public static Vector256<ushort> Xor(Vector256<ushort> one, Vector256<ushort> other) => one ^ other;

    public static Vector256<ushort> WhereZero(Vector256<ushort> vector) => Avx2.CompareEqual(vector, Vector256<ushort>.Zero);

    public static bool IsZero(Vector256<ushort> vector) => vector == Vector256<ushort>.Zero;

    public static Vector256<ushort> Multiply(Vector256<ushort> one, Vector256<ushort> other) => one * other;

    public static Vector256<ushort> LookUp(Vector256<ushort> at, ushort[] table, int entries)
    {
        Span<ushort> found = stackalloc ushort[16];
        for (int i = 0; i < found.Length; i++)
            found[i] = table[at[i]];
        return Vector256.Create<ushort>(found);
    }

    // Shifts across the halves take two instructions: the half before, then both joined.
    public static Vector256<ushort> SpreadRight(Vector256<ushort> vector, int reach)
    {
        vector = Greater(vector, Avx2.AlignRight(vector, Before(vector), 14), 1);
        if (reach >= 2)
            vector = Greater(vector, Avx2.AlignRight(vector, Before(vector), 12), 2);
        if (reach >= 4)
            vector = Greater(vector, Avx2.AlignRight(vector, Before(vector), 8), 4);
        return reach >= 8 ? Greater(vector, Before(vector), 8) : vector;
    }

    public static Vector256<ushort> SpreadLeft(Vector256<ushort> vector, int reach)
    {
        vector = Greater(vector, Avx2.AlignRight(Behind(vector), vector, 2), 1);
        if (reach >= 2)
            vector = Greater(vector, Avx2.AlignRight(Behind(vector), vector, 4), 2);
        if (reach >= 4)
            vector = Greater(vector, Avx2.AlignRight(Behind(vector), vector, 8), 4);
        return reach >= 8 ? Greater(vector, Behind(vector), 8) : vector;
    }

    public static Vector256<ushort> First(Vector256<ushort> vector) => Vector256.Create(vector[0]);

    public static Vector256<ushort> Last(Vector256<ushort> vector) => Vector256.Create(vector[15]);

    private static Vector256<ushort> Before(Vector256<ushort> vector) => Avx2.Permute2x128(vector, vector, 0x08);

    private static Vector256<ushort> Behind(Vector256<ushort> vector) => Avx2.Permute2x128(vector, vector, 0x81);

    private static Vector256<ushort> Greater(Vector256<ushort> vector, Vector256<ushort> moved, ushort step) =>
        Avx2.Max(vector, Avx2.SubtractSaturate(moved, Vector256.Create(step)));
}
