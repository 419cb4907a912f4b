using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Laydown.Raster.Masks;

/// <summary>8 numbers of 32 bits by AVX2, for squares that 16 bits do not hold. All stay under 2³¹.</summary>
internal readonly struct Longs256 : IDistanceLanes<Vector256<uint>, uint>
{
    public static int Count => 8;

    public static int Most => (1 << 30) - 1;

    public static Vector256<uint> All(int value) => Vector256.Create((uint)value);

    public static Vector256<uint> Load(ref uint from) => Vector256.LoadUnsafe(ref from);

    public static void Store(Vector256<uint> vector, ref uint to) => vector.StoreUnsafe(ref to);

    public static Vector256<uint> Others(ref ushort from, ushort sought) =>
        ~Vector256.Equals(Avx2.ConvertToVector256Int32(Vector128.LoadUnsafe(ref from)).AsUInt32(), Vector256.Create((uint)sought));

    public static Vector256<uint> Add(Vector256<uint> one, Vector256<uint> other) => one + other;

    public static Vector256<uint> Subtract(Vector256<uint> one, Vector256<uint> other) => Vector256.Max(one, other) - other;

    public static Vector256<uint> Least(Vector256<uint> one, Vector256<uint> other) => Vector256.Min(one, other);

    public static Vector256<uint> Greatest(Vector256<uint> one, Vector256<uint> other) => Vector256.Max(one, other);

    public static Vector256<uint> And(Vector256<uint> one, Vector256<uint> other) => one & other;

    public static Vector256<uint> Xor(Vector256<uint> one, Vector256<uint> other) => one ^ other;

    public static Vector256<uint> WhereZero(Vector256<uint> vector) => Vector256.Equals(vector, Vector256<uint>.Zero);

    public static bool IsZero(Vector256<uint> vector) => vector == Vector256<uint>.Zero;

    public static Vector256<uint> Multiply(Vector256<uint> one, Vector256<uint> other) => one * other;
}
