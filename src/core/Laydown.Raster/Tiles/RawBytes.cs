using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Laydown.Raster.Tiles;

/// <summary>Brings rows of 8 bits to 16 where they stand: bytes are read into the upper half of a row and widened from its front.</summary>
public static class RawBytes
{
    /// <summary>The half of a row that takes as many bytes as the row has values.</summary>
    public static Span<byte> UpperHalf(Span<ushort> row) => MemoryMarshal.AsBytes(row)[row.Length..];

    /// <summary>Widens the bytes of the upper half over the whole row: full stays full.</summary>
    /// <remarks>What is written never reaches bytes that are still to be read: value x ends at byte 2x + 1, byte x + 1 lies at length + x + 1.</remarks>
    public static void Widen(Span<ushort> row)
    {
        ReadOnlySpan<byte> bytes = UpperHalf(row);
        int x = 0;
        for (; x + Vector128<byte>.Count <= row.Length; x += Vector128<byte>.Count)
        {
            (Vector128<ushort> low, Vector128<ushort> high) = Vector128.Widen(Vector128.Create(bytes[x..]));
            (low * 257).CopyTo(row[x..]);
            (high * 257).CopyTo(row[(x + Vector128<ushort>.Count)..]);
        }

        for (; x < row.Length; x++)
            row[x] = (ushort)(bytes[x] * 257);
    }
}
