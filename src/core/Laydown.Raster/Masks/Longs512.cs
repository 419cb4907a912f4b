using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Laydown.Raster.Masks;

/// <summary>16 numbers of 32 bits by AVX-512, for squares that 16 bits do not hold. All stay under 2³¹.</summary>
internal readonly struct Longs512 : IDistanceLanes<Vector512<uint>, uint>
{
    public static int Count => 16;

    public static int Most => (1 << 30) - 1;

    public static Vector512<uint> All(int value) => Vector512.Create((uint)value);

    public static Vector512<uint> Load(ref uint from) => Vector512.LoadUnsafe(ref from);

    public static void Store(Vector512<uint> vector, ref uint to) => vector.StoreUnsafe(ref to);

    public static Vector512<uint> Others(ref ushort from, ushort sought) =>
        ~Vector512.Equals(Avx512F.ConvertToVector512Int32(Vector256.LoadUnsafe(ref from)).AsUInt32(), Vector512.Create((uint)sought));

    public static Vector512<uint> Add(Vector512<uint> one, Vector512<uint> other) => one + other;

    public static Vector512<uint> Subtract(Vector512<uint> one, Vector512<uint> other) => Vector512.Max(one, other) - other;

    public static Vector512<uint> Least(Vector512<uint> one, Vector512<uint> other) => Vector512.Min(one, other);

    public static Vector512<uint> Greatest(Vector512<uint> one, Vector512<uint> other) => Vector512.Max(one, other);

    public static Vector512<uint> And(Vector512<uint> one, Vector512<uint> other) => one & other;

    public static Vector512<uint> Xor(Vector512<uint> one, Vector512<uint> other) => one ^ other;

    public static Vector512<uint> WhereZero(Vector512<uint> vector) => Vector512.Equals(vector, Vector512<uint>.Zero);

    public static bool IsZero(Vector512<uint> vector) => vector == Vector512<uint>.Zero;

    public static Vector512<uint> Multiply(Vector512<uint> one, Vector512<uint> other) => one * other;
}
