using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Laydown.Raster.Masks;

/// <summary>64 bytes by AVX-512 and its byte permutes.</summary>
internal readonly struct Bytes512 : IMaskLanes<Vector512<byte>, byte>
{
    public static int Count => 64;

    public static Vector512<byte> Rising => Vector512.Create(
        (byte)1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25, 26, 27, 28, 29, 30, 31, 32,
        33, 34, 35, 36, 37, 38, 39, 40, 41, 42, 43, 44, 45, 46, 47, 48, 49, 50, 51, 52, 53, 54, 55, 56, 57, 58, 59, 60, 61, 62, 63, 64);

    public static Vector512<byte> Falling => Vector512.Create(
        (byte)64, 63, 62, 61, 60, 59, 58, 57, 56, 55, 54, 53, 52, 51, 50, 49, 48, 47, 46, 45, 44, 43, 42, 41, 40, 39, 38, 37, 36, 35, 34, 33,
        32, 31, 30, 29, 28, 27, 26, 25, 24, 23, 22, 21, 20, 19, 18, 17, 16, 15, 14, 13, 12, 11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1);

    public static Vector512<byte> All(int value) => Vector512.Create((byte)value);

    public static Vector512<byte> Load(ref byte from) => Vector512.LoadUnsafe(ref from);

    public static void Store(Vector512<byte> vector, ref byte to) => vector.StoreUnsafe(ref to);

    public static Vector512<byte> Others(ref ushort from, ushort sought) =>
        Vector512.Narrow(Vector512.LoadUnsafe(ref from), Vector512.LoadUnsafe(ref from, 32)) ^ Vector512.Create((byte)sought);

    public static void Widen(Vector512<byte> vector, ref ushort to)
    {
        Avx512BW.ConvertToVector512Int16(vector.GetLower().AsSByte()).AsUInt16().StoreUnsafe(ref to);
        Avx512BW.ConvertToVector512Int16(vector.GetUpper().AsSByte()).AsUInt16().StoreUnsafe(ref to, 32);
    }

    public static Vector512<byte> Add(Vector512<byte> one, Vector512<byte> other) => Avx512BW.AddSaturate(one, other);

    public static Vector512<byte> Subtract(Vector512<byte> one, Vector512<byte> other) => Avx512BW.SubtractSaturate(one, other);

    public static Vector512<byte> Least(Vector512<byte> one, Vector512<byte> other) => Vector512.Min(one, other);

    public static Vector512<byte> Greatest(Vector512<byte> one, Vector512<byte> other) => Vector512.Max(one, other);

    public static Vector512<byte> And(Vector512<byte> one, Vector512<byte> other) => one & other;

    public static Vector512<byte> Xor(Vector512<byte> one, Vector512<byte> other) => one ^ other;

    public static Vector512<byte> WhereZero(Vector512<byte> vector) => Vector512.Equals(vector, Vector512<byte>.Zero);

    public static bool IsZero(Vector512<byte> vector) => vector == Vector512<byte>.Zero;

    public static Vector512<byte> LookUp(Vector512<byte> at, byte[] table, int entries)
    {
        ref byte first = ref table[0];
        Vector512<byte> low = Vector512.LoadUnsafe(ref first);
        if (entries <= 64)
            return Avx512Vbmi.PermuteVar64x8(low, at);
        Vector512<byte> found = Avx512Vbmi.PermuteVar64x8x2(low, at, Vector512.LoadUnsafe(ref first, 64));
        if (entries <= 128)
            return found;
        Vector512<byte> far = Avx512Vbmi.PermuteVar64x8x2(Vector512.LoadUnsafe(ref first, 128), at, Vector512.LoadUnsafe(ref first, 192));
        return Vector512.ConditionalSelect(Vector512.GreaterThanOrEqual(at, Vector512.Create((byte)128)), far, found);
    }

    // A column whose source would lie outside takes the outermost one instead: that is nearer than the step says, so nothing too great comes of it.
    public static Vector512<byte> SpreadRight(Vector512<byte> vector, int reach)
    {
        for (int step = 1; step < 64 && step <= reach; step *= 2)
            vector = Greater(vector, Slide(32 - step), (byte)step);
        return vector;
    }

    public static Vector512<byte> SpreadLeft(Vector512<byte> vector, int reach)
    {
        for (int step = 1; step < 64 && step <= reach; step *= 2)
            vector = Greater(vector, Slide(32 + step), (byte)step);
        return vector;
    }

    public static Vector512<byte> First(Vector512<byte> vector) => Avx512BW.BroadcastScalarToVector512(vector.GetLower().GetLower());

    public static Vector512<byte> Last(Vector512<byte> vector) => Avx512Vbmi.PermuteVar64x8(vector, Vector512.Create((byte)63));

    /// <summary>The columns 0 to 63 with the outermost ones said again, from an offset on.</summary>
    private static ReadOnlySpan<byte> Columns =>
    [
        0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0,
        0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25, 26, 27, 28, 29, 30, 31,
        32, 33, 34, 35, 36, 37, 38, 39, 40, 41, 42, 43, 44, 45, 46, 47, 48, 49, 50, 51, 52, 53, 54, 55, 56, 57, 58, 59, 60, 61, 62, 63,
        63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63,
    ];

    private static Vector512<byte> Slide(int offset) => Vector512.LoadUnsafe(in MemoryMarshal.GetReference(Columns), (nuint)offset);

    private static Vector512<byte> Greater(Vector512<byte> vector, Vector512<byte> columns, byte step) =>
        Vector512.Max(vector, Avx512BW.SubtractSaturate(Avx512Vbmi.PermuteVar64x8(vector, columns), Vector512.Create(step)));
}
