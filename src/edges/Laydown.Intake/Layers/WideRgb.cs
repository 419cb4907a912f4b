using System.Buffers.Binary;
using System.Text;

namespace Laydown.Intake.Layers;

/// <summary>A wide RGB profile for pages on their way to CIELAB: the primaries of ROMM RGB under D50, a tone curve of gamma 1.8 [ISO22028-2].</summary>
internal static class WideRgb
{
    private const int HeaderBytes = 128;

    /// <summary>The profile: ICC version 2, three primaries that add up to D50, one curve.</summary>
    public static byte[] Profile()
    {
        (string Tag, byte[] Data)[] tags =
        [
            ("desc", Description("wide RGB")), ("cprt", [.. "text"u8, 0, 0, 0, 0, .. "made here"u8, 0, 0, 0]),
            ("wtpt", Xyz(0.9642, 1, 0.8249)), ("rXYZ", Xyz(0.7977, 0.2880, 0)), ("gXYZ", Xyz(0.1352, 0.7119, 0)), ("bXYZ", Xyz(0.0313, 0.0001, 0.8249)),
            ("rTRC", Gamma()), ("gTRC", Gamma()), ("bTRC", Gamma()),
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
        Xyz(0.9642, 1, 0.8249).AsSpan(8).CopyTo(profile.AsSpan(68));
    }

    private static byte[] Xyz(double x, double y, double z)
    {
        byte[] data = new byte[20];
        "XYZ "u8.CopyTo(data);
        double[] values = [x, y, z];
        for (int at = 0; at < 3; at++)
            BinaryPrimitives.WriteInt32BigEndian(data.AsSpan(8 + (at * 4)), (int)Math.Round(values[at] * 65536));
        return data;
    }

    // One value in a curve is a gamma of 8 bits before and 8 after the point: 1.8 is 0x01CD.
    private static byte[] Gamma() => [.. "curv"u8, 0, 0, 0, 0, 0, 0, 0, 1, 0x01, 0xCD];

    private static byte[] Description(string name)
    {
        byte[] data = new byte[12 + name.Length + 1 + 78];
        "desc"u8.CopyTo(data);
        BinaryPrimitives.WriteInt32BigEndian(data.AsSpan(8), name.Length + 1);
        Encoding.ASCII.GetBytes(name, data.AsSpan(12));
        return data;
    }
}
