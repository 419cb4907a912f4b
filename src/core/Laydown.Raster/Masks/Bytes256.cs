using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Laydown.Raster.Masks;

/// <summary>32 bytes by AVX2.</summary>
internal readonly struct Bytes256 : IMaskLanes<Vector256<byte>, byte>
{
    public static int Count => 32;

    public static Vector256<byte> Rising => Vector256.Create(
        (byte)1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25, 26, 27, 28, 29, 30, 31, 32);

    public static Vector256<byte> Falling => Vector256.Create(
        (byte)32, 31, 30, 29, 28, 27, 26, 25, 24, 23, 22, 21, 20, 19, 18, 17, 16, 15, 14, 13, 12, 11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1);

    public static Vector256<byte> All(int value) => Vector256.Create((byte)value);

    public static Vector256<byte> Load(ref byte from) => Vector256.LoadUnsafe(ref from);

    public static void Store(Vector256<byte> vector, ref byte to) => vector.StoreUnsafe(ref to);

    public static Vector256<byte> Others(ref ushort from, ushort sought)
    {
        // The pack works in halves of 128 bits; −1 and 0 keep their value in it.
        Vector256<sbyte> packed = Avx2.PackSignedSaturate(Vector256.LoadUnsafe(ref from).AsInt16(), Vector256.LoadUnsafe(ref from, 16).AsInt16());
        return Avx2.Permute4x64(packed.AsUInt64(), 0b_11_01_10_00).AsByte() ^ Vector256.Create((byte)sought);
    }

    public static void Widen(Vector256<byte> vector, ref ushort to)
    {
        Avx2.ConvertToVector256Int16(vector.GetLower().AsSByte()).AsUInt16().StoreUnsafe(ref to);
        Avx2.ConvertToVector256Int16(vector.GetUpper().AsSByte()).AsUInt16().StoreUnsafe(ref to, 16);
    }

    public static Vector256<byte> Add(Vector256<byte> one, Vector256<byte> other) => Avx2.AddSaturate(one, other);

    public static Vector256<byte> Subtract(Vector256<byte> one, Vector256<byte> other) => Avx2.SubtractSaturate(one, other);

    public static Vector256<byte> Least(Vector256<byte> one, Vector256<byte> other) => Avx2.Min(one, other);

    public static Vector256<byte> Greatest(Vector256<byte> one, Vector256<byte> other) => Avx2.Max(one, other);

    public static Vector256<byte> And(Vector256<byte> one, Vector256<byte> other) => one & other;

    public static Vector256<byte> Xor(Vector256<byte> one, Vector256<byte> other) => one ^ other;

    public static Vector256<byte> WhereZero(Vector256<byte> vector) => Avx2.CompareEqual(vector, Vector256<byte>.Zero);

    public static bool IsZero(Vector256<byte> vector) => vector == Vector256<byte>.Zero;

    public static Vector256<byte> LookUp(Vector256<byte> at, byte[] table, int entries)
    {
        // A shuffle knows 16 entries. What lies outside them gets its top bit by the saturated sum, and so reads 0.
        Vector256<byte> found = Vector256<byte>.Zero;
        for (int first = 0; first < entries; first += 16)
        {
            Vector256<byte> within = Avx2.AddSaturate(at - Vector256.Create((byte)first), Vector256.Create((byte)0x70));
            Vector128<byte> part = Vector128.LoadUnsafe(ref table[first]);
            found |= Avx2.Shuffle(Vector256.Create(part, part), within);
        }

        return found;
    }

    // Shifts across the halves take two instructions: the half before, then both joined.
    public static Vector256<byte> SpreadRight(Vector256<byte> vector, int reach)
    {
        vector = Greater(vector, Avx2.AlignRight(vector, Before(vector), 15), 1);
        if (reach >= 2)
            vector = Greater(vector, Avx2.AlignRight(vector, Before(vector), 14), 2);
        if (reach >= 4)
            vector = Greater(vector, Avx2.AlignRight(vector, Before(vector), 12), 4);
        if (reach >= 8)
            vector = Greater(vector, Avx2.AlignRight(vector, Before(vector), 8), 8);
        return reach >= 16 ? Greater(vector, Before(vector), 16) : vector;
    }

    public static Vector256<byte> SpreadLeft(Vector256<byte> vector, int reach)
    {
        vector = Greater(vector, Avx2.AlignRight(Behind(vector), vector, 1), 1);
        if (reach >= 2)
            vector = Greater(vector, Avx2.AlignRight(Behind(vector), vector, 2), 2);
        if (reach >= 4)
            vector = Greater(vector, Avx2.AlignRight(Behind(vector), vector, 4), 4);
        if (reach >= 8)
            vector = Greater(vector, Avx2.AlignRight(Behind(vector), vector, 8), 8);
        return reach >= 16 ? Greater(vector, Behind(vector), 16) : vector;
    }

    public static Vector256<byte> First(Vector256<byte> vector) => Avx2.BroadcastScalarToVector256(vector.GetLower());

    public static Vector256<byte> Last(Vector256<byte> vector) =>
        Avx2.Shuffle(Avx2.Permute2x128(vector, vector, 0x11), Vector256.Create((byte)15));

    private static Vector256<byte> Before(Vector256<byte> vector) => Avx2.Permute2x128(vector, vector, 0x08);

    private static Vector256<byte> Behind(Vector256<byte> vector) => Avx2.Permute2x128(vector, vector, 0x81);

    private static Vector256<byte> Greater(Vector256<byte> vector, Vector256<byte> moved, byte step) =>
        Avx2.Max(vector, Avx2.SubtractSaturate(moved, Vector256.Create(step)));
}
