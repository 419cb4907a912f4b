using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Laydown.Raster.Screens;

/// <summary>Results of comparisons, turned round in groups, to packed dots.</summary>
internal static class DotPacking
{
    /// <summary>Byte order that turns groups of 16-bit values round: groups of 8 for 1 bit a dot, of 4 for 2 bits.</summary>
    public static Vector256<byte> Turn256(int bits)
    {
        Span<byte> order = stackalloc byte[32];
        for (int at = 0; at < 32; at++)
            order[at] = (byte)(((at & 15) ^ (bits == 1 ? 14 : 6)) & 15);
        return Vector256.Create<byte>(order);
    }

    /// <summary>The same, twice as wide.</summary>
    public static Vector512<byte> Turn512(int bits) => Vector512.Create(Turn256(bits), Turn256(bits));

    /// <summary>32 dots of 1 bit from two times 16 results.</summary>
    public static uint Bits(Vector256<short> low, Vector256<short> high) =>
        (uint)Avx2.MoveMask(Avx2.Permute4x64(Avx2.PackSignedSaturate(low, high).AsInt64(), 0b11_01_10_00).AsSByte());

    /// <summary>32 dots of 2 bits from the bits of those that reach each drop; who reaches a larger one reaches the smaller.</summary>
    public static ulong Codes(ulong one, ulong two, ulong three) =>
        Bmi2.X64.ParallelBitDeposit(one ^ two ^ three, 0x5555555555555555) | Bmi2.X64.ParallelBitDeposit(two, 0xAAAAAAAAAAAAAAAA);

    /// <summary>32 dots of 2 bits from two times 16 codes, 0 to 3.</summary>
    public static ulong Codes(Vector256<short> low, Vector256<short> high)
    {
        // Codes as bytes; then four of them into one byte: weights 1, 4, 16, 64 in turned order.
        Vector256<byte> codes = Avx2.Permute4x64(Avx2.PackUnsignedSaturate(low, high).AsInt64(), 0b11_01_10_00).AsByte();
        Vector256<short> pairs = Avx2.MultiplyAddAdjacent(codes, Vector256.Create(0x40100401).AsSByte());
        Vector256<int> fours = Avx2.MultiplyAddAdjacent(pairs, Vector256.Create((short)1));
        Vector256<long> bytes = Avx2.Shuffle(fours.AsByte(), Vector256.Create(0x0000000C080400).AsByte()).AsInt64();
        return (uint)bytes.GetElement(0) | ((ulong)(uint)bytes.GetElement(2) << 32);
    }
}
