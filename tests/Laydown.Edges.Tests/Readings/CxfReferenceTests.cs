using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;
using Laydown.Colour.Readings;
using Laydown.Formats.Readings;

namespace Laydown.Edges.Tests.Readings;

/// <summary>The CxF3 file inside a public reference profile, written by a program of others (tests/data/colour/README.md).</summary>
public sealed class CxfReferenceTests
{
    [Fact]
    public void Its_1617_patches_are_those_of_the_public_table()
    {
        ReadingSet cxf = ReadingsFile.Read("CGATS21_CRPC7.cxf", Embedded()).Value;
        ReadingSet table = ReadingsData.ReadFile("CGATS21-2-CRPC7.csv").Value;
        Assert.Equal(1617, cxf.Patches.Count);
        Assert.Equal(table.InkNames, cxf.InkNames);
        Assert.Equal("M1", cxf.Measured.Condition);
        Assert.Equal("2013-09-05T16:17:33-06:00", cxf.Measured.Created);
        Assert.Equal(table.Patches.Select(p => (p.Id, p.Lab)), cxf.Patches.Select(p => (p.Id, p.Lab)));
        Assert.Equal(table.Patches.SelectMany(p => p.Inks), cxf.Patches.SelectMany(p => p.Inks));
    }

    [Fact]
    public void Any_prefix_and_encoding_reads_the_same()
    {
        string text = Encoding.UTF8.GetString(Embedded());
        string bare = text.Replace("<cc:", "<", StringComparison.Ordinal).Replace("</cc:", "</", StringComparison.Ordinal).Replace("xmlns:cc=", "xmlns=", StringComparison.Ordinal);
        ReadingSet plain = ReadingsFile.Read("a.cxf", Encoding.UTF8.GetBytes(text)).Value;
        ReadingSet other = ReadingsFile.Read("a.cxf", Encoding.UTF8.GetBytes(bare)).Value;
        Assert.Equal(plain.Patches.Select(p => (p.Id, p.Lab)), other.Patches.Select(p => (p.Id, p.Lab)));
    }

    // The tag holds "ZXML", 8 bytes, then a zlib stream.
    private static byte[] Embedded()
    {
        byte[] profile = ReadingsData.Bytes("CGATS21_CRPC7.icc");
        int tags = BinaryPrimitives.ReadInt32BigEndian(profile.AsSpan(128));
        for (int tag = 0; tag < tags; tag++)
        {
            Span<byte> entry = profile.AsSpan(132 + (12 * tag), 12);
            if (!entry[..4].SequenceEqual("CxF "u8))
                continue;
            int start = BinaryPrimitives.ReadInt32BigEndian(entry[4..]), length = BinaryPrimitives.ReadInt32BigEndian(entry[8..]);
            using ZLibStream inside = new(new MemoryStream(profile, start + 12, length - 12), CompressionMode.Decompress);
            using MemoryStream whole = new();
            inside.CopyTo(whole);
            return whole.ToArray();
        }

        throw new InvalidOperationException("The profile has no tag of readings.");
    }
}
