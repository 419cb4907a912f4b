using System.Buffers.Binary;
using System.Text;

namespace Laydown.Formats.Images;

/// <summary>Reads the description of an ICC profile: the <c>desc</c> tag of versions 2 and 4.</summary>
public static class ProfileName
{
    private const int HeaderBytes = 128;

    /// <summary>The description, or null where the bytes hold none that can be read.</summary>
    public static string? Of(ReadOnlySpan<byte> profile)
    {
        if (profile.Length < HeaderBytes + 4)
            return null;

        uint tags = Math.Min(BinaryPrimitives.ReadUInt32BigEndian(profile[HeaderBytes..]), 200);
        for (int tag = 0; tag < tags; tag++)
        {
            int at = HeaderBytes + 4 + (tag * 12);
            if (at + 12 > profile.Length)
                return null;
            if (profile.Slice(at, 4).SequenceEqual("desc"u8))
                return Tag(profile, BinaryPrimitives.ReadUInt32BigEndian(profile[(at + 4)..]), BinaryPrimitives.ReadUInt32BigEndian(profile[(at + 8)..]));
        }

        return null;
    }

    private static string? Tag(ReadOnlySpan<byte> profile, uint offset, uint length)
    {
        if (length < 12 || (ulong)offset + length > (ulong)profile.Length)
            return null;

        ReadOnlySpan<byte> tag = profile.Slice((int)offset, (int)length);
        return tag.StartsWith("mluc"u8) ? Localised(tag) : tag.StartsWith("desc"u8) ? Ascii(tag) : null;
    }

    private static string? Ascii(ReadOnlySpan<byte> tag)
    {
        uint count = BinaryPrimitives.ReadUInt32BigEndian(tag[8..]);
        return count > tag.Length - 12 ? null : Clean(Encoding.Latin1.GetString(tag.Slice(12, (int)count)));
    }

    private static string? Localised(ReadOnlySpan<byte> tag)
    {
        if (tag.Length < 28)
            return null;

        // The first record is taken: profiles carry their main language first.
        uint length = BinaryPrimitives.ReadUInt32BigEndian(tag[20..]);
        uint offset = BinaryPrimitives.ReadUInt32BigEndian(tag[24..]);
        return (ulong)offset + length > (ulong)tag.Length ? null : Clean(Encoding.BigEndianUnicode.GetString(tag.Slice((int)offset, (int)length)));
    }

    private static string? Clean(string text)
    {
        string name = text.TrimEnd('\0').Trim();
        return name.Length == 0 ? null : name;
    }
}
