using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Laydown.Raster.Scaling;

/// <summary>Values of 15 bits within 16 signed ones, with room for overshoot: bare stands at −12288, full at 20479.</summary>
internal static class RoomyValues
{
    /// <summary>Where bare stands below 0.</summary>
    public const short Below = 12288;

    private const int Most = 32767, TopBit = 14;

    /// <summary>From 16 bits; the last bit is let go.</summary>
    public static void From(ReadOnlySpan<ushort> values, Span<short> roomy)
    {
        ref ushort from = ref MemoryMarshal.GetReference(values);
        ref short to = ref MemoryMarshal.GetReference(roomy);
        int x = 0;
        for (; x + Vector256<ushort>.Count <= values.Length; x += Vector256<ushort>.Count)
            ((Vector256.LoadUnsafe(ref from, (nuint)x) >>> 1).AsInt16() - Vector256.Create(Below)).StoreUnsafe(ref to, (nuint)x);
        for (; x < values.Length; x++)
            roomy[x] = (short)((values[x] >> 1) - Below);
    }

    /// <summary>Back to 16 bits; what lies beyond bare or full is cut, the last bit is the first.</summary>
    public static ushort Cut(int roomy)
    {
        int value = Math.Clamp(roomy + Below, 0, Most);
        return (ushort)((value << 1) | (value >> TopBit));
    }

    /// <summary>The same for many.</summary>
    public static Vector256<ushort> Cut(Vector256<short> roomy)
    {
        Vector256<short> value = Vector256.Max(Vector256.AddSaturate(roomy, Vector256.Create(Below)), Vector256<short>.Zero);
        return ((value << 1) | (value >>> TopBit)).AsUInt16();
    }
}
