using System.Buffers.Binary;
using System.Text;

namespace Laydown.Formats.Icc;

/// <summary>Header and tags of a profile, each length held against the bytes at hand. [ICC1]</summary>
internal sealed class TagTable
{
    private const int HeaderBytes = 128, MostTags = 200;

    private readonly Dictionary<string, ReadOnlyMemory<byte>> tags = [];

    /// <summary>Reads the table.</summary>
    /// <exception cref="TagFaultException">Cut short, other signature, tags outside the file.</exception>
    internal TagTable(ReadOnlyMemory<byte> bytes)
    {
        if (bytes.Length < HeaderBytes + 4 || Ascii(bytes.Span[36..40]) != "acsp")
            throw new TagFaultException("header", Invariant($"{bytes.Length} bytes"), "at least 132 bytes with acsp at byte 36");
        uint stated = U32(bytes.Span), count = U32(bytes.Span[HeaderBytes..]);
        if (stated != bytes.Length)
            throw new TagFaultException("header", Invariant($"{stated} bytes in the header, {bytes.Length} bytes at hand"), "the same number");
        if (count > MostTags || HeaderBytes + 4 + (12L * count) > bytes.Length)
            throw new TagFaultException("tag table", Invariant($"{count} tags"), Invariant($"at most {MostTags}, all within the file"));

        Edition = bytes.Span[8];
        (Class, Space, Connection) = (Ascii(bytes.Span[12..16]), Ascii(bytes.Span[16..20]), Ascii(bytes.Span[20..24]));
        for (int i = 0; i < count; i++)
        {
            ReadOnlySpan<byte> entry = bytes.Span.Slice(HeaderBytes + 4 + (12 * i), 12);
            (string name, uint offset, uint size) = (Ascii(entry[..4]), U32(entry[4..]), U32(entry[8..]));
            if (offset < HeaderBytes || size < 8 || (long)offset + size > bytes.Length)
                throw new TagFaultException(name, Invariant($"{size} bytes at {offset}"), Invariant($"at least 8 bytes within the file's {bytes.Length}"));
            tags[name] = bytes.Slice((int)offset, (int)size);
        }
    }

    internal int Edition { get; }

    internal string Class { get; }

    internal string Space { get; }

    internal string Connection { get; }

    internal bool Has(string tag) => tags.ContainsKey(tag);

    /// <summary>The tag's bytes, type signature first.</summary>
    /// <exception cref="TagFaultException">It is missing.</exception>
    internal ReadOnlyMemory<byte> Tag(string tag) =>
        tags.TryGetValue(tag, out ReadOnlyMemory<byte> found) ? found : throw new TagFaultException(tag, "no such tag", "the tag");

    /// <summary>Tristimulus values of a tag.</summary>
    internal double[] Xyz(string tag)
    {
        ReadOnlySpan<byte> bytes = Tag(tag).Span;
        if (bytes.Length < 20 || Ascii(bytes[..4]) != "XYZ ")
            throw new TagFaultException(tag, Invariant($"type {Ascii(bytes[..4])}, {bytes.Length} bytes"), "type XYZ, 20 bytes");
        return [Fixed(bytes[8..]), Fixed(bytes[12..]), Fixed(bytes[16..])];
    }

    /// <summary>Channels of a space of pixels; 0 for a space that is not taken.</summary>
    internal static int Channels(string space) => space switch
    {
        "GRAY" => 1,
        "RGB " or "Lab " or "XYZ " => 3,
        "CMYK" => 4,
        { Length: 4 } when space.EndsWith("CLR", StringComparison.Ordinal) && space[0] is >= '3' and <= '8' => space[0] - '0',
        _ => 0,
    };

    internal static string Ascii(ReadOnlySpan<byte> four) => Encoding.Latin1.GetString(four);

    internal static uint U32(ReadOnlySpan<byte> bytes) => BinaryPrimitives.ReadUInt32BigEndian(bytes);

    internal static int U16(ReadOnlySpan<byte> bytes) => BinaryPrimitives.ReadUInt16BigEndian(bytes);

    internal static double Fixed(ReadOnlySpan<byte> bytes) => BinaryPrimitives.ReadInt32BigEndian(bytes) / 65536.0;
}
