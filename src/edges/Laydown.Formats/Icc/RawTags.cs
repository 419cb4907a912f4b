using System.Buffers.Binary;
using System.Text;
using Laydown.Colour.Spaces;

namespace Laydown.Formats.Icc;

/// <summary>Tags laid down byte by byte, so that nothing in them is left to chance. [ICC1]</summary>
internal static class RawTags
{
    internal const uint ColorantTable = 0x636C7274, ColorantTableOut = 0x636C6F74, Adaptation = 0x63686164, Target = 0x74617267,
        Sequence = 0x70736571;

    private const int NameBytes = 32;

    /// <summary>Names of the inks with their colours, Lab of 16 bits as in edition 2.</summary>
    internal static byte[] Colorants(IReadOnlyList<string> names, IReadOnlyList<Lab> colours)
    {
        byte[] tag = new byte[12 + ((NameBytes + 6) * names.Count)];
        "clrt"u8.CopyTo(tag);
        BinaryPrimitives.WriteInt32BigEndian(tag.AsSpan(8), names.Count);
        for (int i = 0; i < names.Count; i++)
        {
            Span<byte> entry = tag.AsSpan(12 + ((NameBytes + 6) * i), NameBytes + 6);
            Encoding.ASCII.GetBytes(names[i], entry[..(NameBytes - 1)]);
            ushort[] codes = InkCodes.Lab2(colours[i]);
            for (int c = 0; c < 3; c++)
                BinaryPrimitives.WriteUInt16BigEndian(entry[(NameBytes + (2 * c))..], codes[c]);
        }

        return tag;
    }

    /// <summary>No adaptation: the print is seen under D50.</summary>
    internal static byte[] NoAdaptation()
    {
        byte[] tag = new byte[44];
        "sf32"u8.CopyTo(tag);
        for (int i = 0; i < 9; i += 4)
            BinaryPrimitives.WriteInt32BigEndian(tag.AsSpan(8 + (4 * i)), 0x10000);
        return tag;
    }

    /// <summary>Plain ASCII text.</summary>
    internal static byte[] Text(string text) => [.. "text"u8, 0, 0, 0, 0, .. Encoding.ASCII.GetBytes(text), 0];

    /// <summary>The profiles that a link stands for, by their names.</summary>
    internal static byte[] ProfileSequence(params IReadOnlyList<string> names)
    {
        List<byte> tag = [.. "pseq"u8, 0, 0, 0, 0, 0, 0, 0, (byte)names.Count];
        foreach (string name in names)
        {
            // Maker, model, attributes and technology stay 0: unknown.
            tag.AddRange(new byte[20]);
            tag.AddRange(Localized(name));
            tag.AddRange(Localized(name));
        }

        return [.. tag];
    }

    private static byte[] Localized(string text)
    {
        // An even number of characters keeps what follows on a multiple of four bytes.
        string even = text.Length % 2 == 0 ? text : text + " ";
        byte[] tag = new byte[28 + (2 * even.Length)];
        "mluc"u8.CopyTo(tag);
        BinaryPrimitives.WriteInt32BigEndian(tag.AsSpan(8), 1);
        BinaryPrimitives.WriteInt32BigEndian(tag.AsSpan(12), 12);
        "enGB"u8.CopyTo(tag.AsSpan(16));
        BinaryPrimitives.WriteInt32BigEndian(tag.AsSpan(20), 2 * even.Length);
        BinaryPrimitives.WriteInt32BigEndian(tag.AsSpan(24), 28);
        Encoding.BigEndianUnicode.GetBytes(even, tag.AsSpan(28));
        return tag;
    }
}
