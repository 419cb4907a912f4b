using System.Buffers.Binary;
using System.Numerics;

namespace Laydown.Formats.TiffWriting;

/// <summary>XXH64 [XXH64]: tells damaged bytes from whole ones, several gigabytes a second. No guard against a forger.</summary>
public static class XxHash64
{
    private const ulong P1 = 0x9E3779B185EBCA87, P2 = 0xC2B2AE3D27D4EB4F, P3 = 0x165667B19E3779F9, P4 = 0x85EBCA77C2B2AE63,
        P5 = 0x27D4EB2F165667C5;

    /// <summary>The hash of some bytes, seed 0.</summary>
    public static ulong Of(ReadOnlySpan<byte> bytes)
    {
        ulong hash = bytes.Length >= 32 ? OfLanes(bytes) : P5;
        hash += (ulong)bytes.Length;
        ReadOnlySpan<byte> rest = bytes[(bytes.Length & ~31)..];
        for (; rest.Length >= 8; rest = rest[8..])
            hash = (BitOperations.RotateLeft(hash ^ Round(0, BinaryPrimitives.ReadUInt64LittleEndian(rest)), 27) * P1) + P4;
        if (rest.Length >= 4)
        {
            hash = (BitOperations.RotateLeft(hash ^ (BinaryPrimitives.ReadUInt32LittleEndian(rest) * P1), 23) * P2) + P3;
            rest = rest[4..];
        }

        foreach (byte one in rest)
            hash = BitOperations.RotateLeft(hash ^ (one * P5), 11) * P1;
        hash = (hash ^ (hash >> 33)) * P2;
        hash = (hash ^ (hash >> 29)) * P3;
        return hash ^ (hash >> 32);
    }

    // Four sums run side by side over blocks of 32 bytes and are folded together at the end.
    private static ulong OfLanes(ReadOnlySpan<byte> bytes)
    {
        ulong a = unchecked(P1 + P2), b = P2, c = 0, d = unchecked(0 - P1);
        for (; bytes.Length >= 32; bytes = bytes[32..])
        {
            a = Round(a, BinaryPrimitives.ReadUInt64LittleEndian(bytes));
            b = Round(b, BinaryPrimitives.ReadUInt64LittleEndian(bytes[8..]));
            c = Round(c, BinaryPrimitives.ReadUInt64LittleEndian(bytes[16..]));
            d = Round(d, BinaryPrimitives.ReadUInt64LittleEndian(bytes[24..]));
        }

        ulong hash = BitOperations.RotateLeft(a, 1) + BitOperations.RotateLeft(b, 7)
            + BitOperations.RotateLeft(c, 12) + BitOperations.RotateLeft(d, 18);
        return Folded(Folded(Folded(Folded(hash, a), b), c), d);
    }

    private static ulong Folded(ulong hash, ulong lane) => ((hash ^ Round(0, lane)) * P1) + P4;

    private static ulong Round(ulong lane, ulong word) => BitOperations.RotateLeft(lane + (word * P2), 31) * P1;
}
