using System.Buffers.Binary;
using Laydown.Formats.TiffWriting;
using Laydown.Measures;
using Xunit;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>Dot TIFFs that lie or are damaged are refused with the field that lies; headers out of range never reach a file.</summary>
public sealed class DotTiffRefusalTests
{
    private static readonly DotHeader Header = DotPictures.Header(203, 61, 1, DotPacking.None);

    private static (string Path, byte[] Bytes) Sound(Bench bench, DotPacking packing = DotPacking.None)
    {
        string path = Path.Combine(bench.Pages, "dots.tif");
        DotPictures.Write(path, Header with { Packing = packing });
        return (path, File.ReadAllBytes(path));
    }

    private static long Directory(byte[] bytes) => BinaryPrimitives.ReadInt64LittleEndian(bytes.AsSpan(8));

    // Where the value, or the offset of the values, of a field stands.
    private static int ValueAt(byte[] bytes, ushort tag)
    {
        int at = (int)Directory(bytes);
        int count = (int)BinaryPrimitives.ReadInt64LittleEndian(bytes.AsSpan(at));
        for (int entry = at + 8; entry < at + 8 + (20 * count); entry += 20)
        {
            if (BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(entry)) == tag)
                return entry + 12;
        }

        throw new ArgumentException("no such field", nameof(tag));
    }

    private static InputFault Fault(string path, byte[] bytes)
    {
        File.WriteAllBytes(path, bytes);
        return Assert.Single(DotTiffReader.Open(path).Faults);
    }

    [Theory]
    [InlineData(256, 999_999_999, "ImageWidth, ImageLength")]
    [InlineData(257, 0, "ImageWidth, ImageLength")]
    [InlineData(257, 4_000_000, "StripOffsets")]
    [InlineData(256, 211, "strip 0")]
    [InlineData(258, 4, "BitsPerSample")]
    [InlineData(258, 8, "strip 0")]
    [InlineData(259, 4, "Compression")]
    [InlineData(262, 1, "BitsPerSample")]
    [InlineData(274, 3, "Orientation")]
    [InlineData(277, 2, "BitsPerSample")]
    [InlineData(278, 0, "RowsPerStrip")]
    [InlineData(278, 15, "StripOffsets")]
    [InlineData(284, 2, "PlanarConfiguration")]
    public void A_field_that_lies_is_named(ushort tag, int value, string field)
    {
        using Bench bench = new();
        (string path, byte[] bytes) = Sound(bench);
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(ValueAt(bytes, tag)), value);
        InputFault fault = Fault(path, bytes);
        Assert.Equal(("dots.tif", field), (fault.File, fault.Field));
    }

    [Theory]
    [InlineData(0, "missing")]
    [InlineData(8, "within the file")]
    [InlineData(1L << 40, "within the file")]
    [InlineData(long.MaxValue, "within the file")]
    [InlineData(-5, "missing")]
    [InlineData(16 + 100, "overlap")]
    public void A_strip_in_the_middle_that_is_missing_outside_or_over_another_is_named(long offset, string words)
    {
        using Bench bench = new();
        (string path, byte[] bytes) = Sound(bench);
        int offsets = (int)BinaryPrimitives.ReadInt64LittleEndian(bytes.AsSpan(ValueAt(bytes, 273)));
        BinaryPrimitives.WriteInt64LittleEndian(bytes.AsSpan(offsets + (2 * 8)), offset);
        InputFault fault = Fault(path, bytes);
        Assert.Equal("strip 2", fault.Field);
        Assert.Contains(words, fault.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(415)]
    [InlineData(417)]
    [InlineData(long.MaxValue)]
    public void A_strip_of_another_length_is_refused(long length)
    {
        using Bench bench = new();
        (string path, byte[] bytes) = Sound(bench);
        int lengths = (int)BinaryPrimitives.ReadInt64LittleEndian(bytes.AsSpan(ValueAt(bytes, 279)));
        BinaryPrimitives.WriteInt64LittleEndian(bytes.AsSpan(lengths + 8), length);
        Assert.Equal("strip 1", Fault(path, bytes).Field);
    }

    [Fact]
    public void Every_file_cut_short_is_refused_when_opened()
    {
        using Bench bench = new();
        (string path, byte[] bytes) = Sound(bench);
        for (int length = 0; length < bytes.Length; length += length < 64 ? 1 : 41)
            Fault(path, bytes[..length]);
    }

    [Fact]
    public void No_flipped_byte_of_header_or_directory_crashes_the_reader()
    {
        using Bench bench = new();
        (string path, byte[] bytes) = Sound(bench);
        List<int> places = [.. Enumerable.Range(0, 16), .. Enumerable.Range((int)Directory(bytes), bytes.Length - (int)Directory(bytes))];
        foreach (int place in places)
        {
            byte[] changed = [.. bytes];
            changed[place] ^= 0xFF;
            File.WriteAllBytes(path, changed);
            Reading<DotTiffReader> reading = DotTiffReader.Open(path);
            if (!reading.IsTaken)
                continue;
            using DotTiffReader reader = reading.Value;
            reader.ReadRow(reader.Rows - 1, 0, reader.Columns, new byte[reader.BytesFor(reader.Columns)]);
        }
    }

    [Theory]
    [InlineData(DotPacking.PackBits)]
    [InlineData(DotPacking.Deflate)]
    public void A_packed_strip_that_is_damaged_or_unpacks_to_more_or_less_is_named(DotPacking packing)
    {
        using Bench bench = new();
        (string path, byte[] bytes) = Sound(bench, packing);
        int offsets = (int)BinaryPrimitives.ReadInt64LittleEndian(bytes.AsSpan(ValueAt(bytes, 273)));
        int third = (int)BinaryPrimitives.ReadInt64LittleEndian(bytes.AsSpan(offsets + 16));

        // A strip that says it is another one, which unpacks to the wrong number of rows, and one of noise.
        byte[] noise = [.. bytes];
        new Random(1).NextBytes(noise.AsSpan(third, 40));
        byte[] shorter = [.. bytes];
        BinaryPrimitives.WriteInt32LittleEndian(shorter.AsSpan(ValueAt(bytes, 256)), 198);
        byte[] longer = [.. bytes];
        BinaryPrimitives.WriteInt32LittleEndian(longer.AsSpan(ValueAt(bytes, 256)), 218);
        foreach ((byte[] wrong, int row) in new[] { (noise, 40), (shorter, 0), (longer, 0) })
        {
            File.WriteAllBytes(path, wrong);
            using DotTiffReader reader = DotTiffReader.Open(path).Value;
            InvalidDataException damage = Assert.Throws<InvalidDataException>(() => reader.ReadRow(row, 0, reader.Columns, new byte[64]));
            Assert.StartsWith(Invariant($"dots.tif, strip {row / 16}"), damage.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_file_that_was_never_finished_is_no_dot_file()
    {
        using Bench bench = new();
        string path = Path.Combine(bench.Pages, "dots.tif");
        using (DotTiffWriter writer = DotTiffWriter.Create(path, Header))
        {
            writer.Write(0, DotPictures.Strip(Header, 0));
            Assert.Throws<InvalidOperationException>(writer.Finish);
        }

        Assert.Contains("never finished", Assert.Single(DotTiffReader.Open(path).Faults).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Headers_out_of_range_and_strips_of_another_length_are_refused()
    {
        using Bench bench = new();
        string path = Path.Combine(bench.Pages, "dots.tif");
        foreach (DotHeader wrong in new[]
            {
                Header with { Columns = 0 }, Header with { Rows = 0 }, Header with { BitsPerDot = 4 }, Header with { ScanDpi = double.NaN },
                Header with { InkName = "Türkis" }, Header with { InkName = " " }, Header with { RowsPerStrip = 0 }, Header with { Packing = (DotPacking)9 },
            })
        {
            Assert.ThrowsAny<ArgumentException>(() => DotTiffWriter.Create(path, wrong));
            Assert.False(File.Exists(path));
        }

        using DotTiffWriter writer = DotTiffWriter.Create(path, Header);
        Assert.Throws<ArgumentException>(() => writer.Write(0, new byte[5]));
        Assert.Throws<ArgumentOutOfRangeException>(() => writer.Write(9, new byte[5]));
    }

    [Theory]
    [InlineData(DotPacking.None)]
    [InlineData(DotPacking.Deflate)]
    public void A_full_disk_shows_when_the_file_is_started(DotPacking packing)
    {
        // The system's own full device stands for the file that no longer fits.
        IOException full = Assert.ThrowsAny<IOException>(() => DotTiffWriter.Create("/dev/full", Header with { Packing = packing }));
        Assert.Contains("No space left", full.Message, StringComparison.Ordinal);
    }
}
