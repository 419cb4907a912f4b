using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Laydown.Raster.Masks;

/// <summary>32 numbers of 16 bits by AVX-512, for distances that no byte holds.</summary>
internal readonly struct Words512 : IMaskLanes<Vector512<ushort>, ushort>, IDistanceLanes<Vector512<ushort>, ushort>
{
    public static int Count => 32;

    public static int Most => ushort.MaxValue;

    public static Vector512<ushort> Rising => Vector512.Create(
        (ushort)1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25, 26, 27, 28, 29, 30, 31, 32);

    public static Vector512<ushort> Falling => Vector512.Create(
        (ushort)32, 31, 30, 29, 28, 27, 26, 25, 24, 23, 22, 21, 20, 19, 18, 17, 16, 15, 14, 13, 12, 11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1);

    public static Vector512<ushort> All(int value) => Vector512.Create((ushort)value);

    public static Vector512<ushort> Load(ref ushort from) => Vector512.LoadUnsafe(ref from);

    public static void Store(Vector512<ushort> vector, ref ushort to) => vector.StoreUnsafe(ref to);

    public static Vector512<ushort> Others(ref ushort from, ushort sought) =>
        ~Vector512.Equals(Vector512.LoadUnsafe(ref from), Vector512.Create(sought));

    public static void Widen(Vector512<ushort> vector, ref ushort to) => vector.StoreUnsafe(ref to);

    public static Vector512<ushort> Add(Vector512<ushort> one, Vector512<ushort> other) => Avx512BW.AddSaturate(one, other);

    public static Vector512<ushort> Subtract(Vector512<ushort> one, Vector512<ushort> other) => Avx512BW.SubtractSaturate(one, other);

    public static Vector512<ushort> Least(Vector512<ushort> one, Vector512<ushort> other) => Vector512.Min(one, other);

    public static Vector512<ushort> Greatest(Vector512<ushort> one, Vector512<ushort> other) => Vector512.Max(one, other);

    public static Vector512<ushort> And(Vector512<ushort> one, Vector512<ushort> other) => one & other;

    public static Vector512<ushort> Xor(Vector512<ushort> one, Vector512<ushort> other) => one ^ other;

    public static Vector512<ushort> WhereZero(Vector512<ushort> vector) => Vector512.Equals(vector, Vector512<ushort>.Zero);

    public static bool IsZero(Vector512<ushort> vector) => vector == Vector512<ushort>.Zero;

    public static Vector512<ushort> Multiply(Vector512<ushort> one, Vector512<ushort> other) => one * other;

    public static Vector512<ushort> LookUp(Vector512<ushort> at, ushort[] table, int entries)
    {
        Span<ushort> found = stackalloc ushort[32];
        for (int i = 0; i < found.Length; i++)
            found[i] = table[at[i]];
        return Vector512.Create<ushort>(found);
    }

    // As in bytes: an outermost column stands in for what lies outside.
    public static Vector512<ushort> SpreadRight(Vector512<ushort> vector, int reach)
    {
        for (int step = 1; step < 32 && step <= reach; step *= 2)
        {
            Vector512<ushort> from = Avx512BW.SubtractSaturate(Rising, Vector512.Create((ushort)(step + 1)));
            vector = Vector512.Max(vector, Avx512BW.SubtractSaturate(Avx512BW.PermuteVar32x16(vector, from), Vector512.Create((ushort)step)));
        }

        return vector;
    }

    public static Vector512<ushort> SpreadLeft(Vector512<ushort> vector, int reach)
    {
        for (int step = 1; step < 32 && step <= reach; step *= 2)
        {
            Vector512<ushort> from = Vector512.Min(Rising + Vector512.Create((ushort)(step - 1)), Vector512.Create((ushort)31));
            vector = Vector512.Max(vector, Avx512BW.SubtractSaturate(Avx512BW.PermuteVar32x16(vector, from), Vector512.Create((ushort)step)));
        }

        return vector;
    }

    public static Vector512<ushort> First(Vector512<ushort> vector) => Vector512.Create(vector[0]);

    public static Vector512<ushort> Last(Vector512<ushort> vector) => Vector512.Create(vector[31]);
}
