using System.Buffers.Binary;
using System.IO.Compression;

namespace Laydown.Output.Layers;

/// <summary>Puts the colour profile of a PNG in the place where the format wants it: right after the header.</summary>
internal static class PngChunks
{
    private const int MarkBytes = 8;
    private const uint Polynomial = 0xEDB88320;

    private static readonly uint[] Table = [.. Enumerable.Range(0, 256).Select(n => Entry((uint)n))];

    /// <summary>The same picture with this profile and no other word on its colours.</summary>
    public static byte[] WithProfile(ReadOnlySpan<byte> png, ReadOnlySpan<byte> profile)
    {
        using MemoryStream result = new();
        result.Write(png[..MarkBytes]);
        for (int at = MarkBytes; at < png.Length;)
        {
            int length = 12 + BinaryPrimitives.ReadInt32BigEndian(png[at..]);
            ReadOnlySpan<byte> chunk = png.Slice(at, length), type = chunk.Slice(4, 4);
            if (!type.SequenceEqual("sRGB"u8) && !type.SequenceEqual("iCCP"u8) && !type.SequenceEqual("gAMA"u8) && !type.SequenceEqual("cHRM"u8))
                result.Write(chunk);
            if (type.SequenceEqual("IHDR"u8))
                WriteProfile(result, profile);
            at += length;
        }

        return result.ToArray();
    }

    private static void WriteProfile(MemoryStream target, ReadOnlySpan<byte> profile)
    {
        using MemoryStream body = new();
        body.Write("iCCP"u8);
        body.Write("RGB"u8);
        body.Write([0, 0]);
        using (ZLibStream packed = new(body, CompressionLevel.Optimal, leaveOpen: true))
            packed.Write(profile);

        Span<byte> four = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(four, (int)body.Length - 4);
        target.Write(four);
        target.Write(body.ToArray());
        BinaryPrimitives.WriteUInt32BigEndian(four, Check(body.ToArray()));
        target.Write(four);
    }

    private static uint Check(ReadOnlySpan<byte> bytes)
    {
        uint check = uint.MaxValue;
        foreach (byte b in bytes)
            check = Table[(check ^ b) & 255] ^ (check >> 8);
        return ~check;
    }

    private static uint Entry(uint n)
    {
        for (int bit = 0; bit < 8; bit++)
            n = (n & 1) == 1 ? Polynomial ^ (n >> 1) : n >> 1;
        return n;
    }
}
