using System.Buffers.Binary;
using System.Text;

namespace Laydown.Formats.Icc;

/// <summary>A small RGB profile, written byte by byte: ICC version 2, three primaries, one tone curve for all [ICC1].</summary>
public static class MatrixProfile
{
    private const int HeaderBytes = 128;

    /// <summary>An RGB profile whose white is D50.</summary>
    /// <param name="name">Its description, plain letters.</param>
    /// <param name="red">X, Y, Z of full red under D50, white with Y = 1; with green and blue 0.9642, 1, 0.8249.</param>
    /// <param name="green">X, Y, Z of full green.</param>
    /// <param name="blue">X, Y, Z of full blue.</param>
    /// <param name="curve">Entries of the tone curve: one is a gamma with 8 bits after the point, several are the curve itself.</param>
    public static byte[] Rgb(
        string name, (double X, double Y, double Z) red, (double X, double Y, double Z) green, (double X, double Y, double Z) blue,
        params ReadOnlySpan<ushort> curve)
    {
        byte[] tone = Curve(curve);
        (string Tag, byte[] Data)[] tags =
        [
            ("desc", Description(name)), ("cprt", [.. "text"u8, 0, 0, 0, 0, .. "made here"u8, 0, 0, 0]), ("wtpt", Xyz((0.9642, 1, 0.8249))),
            ("rXYZ", Xyz(red)), ("gXYZ", Xyz(green)), ("bXYZ", Xyz(blue)), ("rTRC", tone), ("gTRC", tone), ("bTRC", tone),
        ];
        int at = HeaderBytes + 4 + (tags.Length * 12);
        byte[] profile = new byte[at + tags.Sum(t => (t.Data.Length + 3) / 4 * 4)];
        Header(profile);
        BinaryPrimitives.WriteInt32BigEndian(profile.AsSpan(HeaderBytes), tags.Length);
        for (int tag = 0; tag < tags.Length; tag++)
        {
            Span<byte> entry = profile.AsSpan(HeaderBytes + 4 + (tag * 12));
            Encoding.ASCII.GetBytes(tags[tag].Tag, entry);
            BinaryPrimitives.WriteInt32BigEndian(entry[4..], at);
            BinaryPrimitives.WriteInt32BigEndian(entry[8..], tags[tag].Data.Length);
            tags[tag].Data.CopyTo(profile, at);
            at += (tags[tag].Data.Length + 3) / 4 * 4;
        }

        return profile;
    }

    private static void Header(byte[] profile)
    {
        BinaryPrimitives.WriteInt32BigEndian(profile, profile.Length);
        BinaryPrimitives.WriteUInt32BigEndian(profile.AsSpan(8), 0x02400000);
        "mntrRGB XYZ "u8.CopyTo(profile.AsSpan(12));
        "acsp"u8.CopyTo(profile.AsSpan(36));
        Xyz((0.9642, 1, 0.8249)).AsSpan(8).CopyTo(profile.AsSpan(68));
    }

    private static byte[] Xyz((double X, double Y, double Z) colour)
    {
        byte[] data = new byte[20];
        "XYZ "u8.CopyTo(data);
        double[] values = [colour.X, colour.Y, colour.Z];
        for (int at = 0; at < 3; at++)
            BinaryPrimitives.WriteInt32BigEndian(data.AsSpan(8 + (at * 4)), (int)Math.Round(values[at] * 65536));
        return data;
    }

    private static byte[] Curve(ReadOnlySpan<ushort> entries)
    {
        byte[] data = new byte[12 + (2 * entries.Length)];
        "curv"u8.CopyTo(data);
        BinaryPrimitives.WriteInt32BigEndian(data.AsSpan(8), entries.Length);
        for (int at = 0; at < entries.Length; at++)
            BinaryPrimitives.WriteUInt16BigEndian(data.AsSpan(12 + (2 * at)), entries[at]);
        return data;
    }

    private static byte[] Description(string name)
    {
        byte[] data = new byte[12 + name.Length + 1 + 78];
        "desc"u8.CopyTo(data);
        BinaryPrimitives.WriteInt32BigEndian(data.AsSpan(8), name.Length + 1);
        Encoding.ASCII.GetBytes(name, data.AsSpan(12));
        return data;
    }
}
