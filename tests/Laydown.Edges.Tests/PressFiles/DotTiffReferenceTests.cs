using BitMiracle.LibTiff.Classic;
using Laydown.Formats.TiffWriting;
using Xunit;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>Dot TIFFs against libtiff's own tools, libvips, ImageMagick and another TIFF library.</summary>
public sealed class DotTiffReferenceTests
{
    public static IEnumerable<TheoryDataRow<int, DotPacking>> Kinds() =>
        from bits in new[] { 1, 2 } from packing in Enum.GetValues<DotPacking>() select new TheoryDataRow<int, DotPacking>(bits, packing);

    [Theory, MemberData(nameof(Kinds))]
    public void Libtiff_reads_all_fields_without_a_warning(int bits, DotPacking packing)
    {
        using Bench bench = new();
        string path = Path.Combine(bench.Pages, "dots.tif");
        DotPictures.Write(path, DotPictures.Header(1003, 61, bits, packing) with { Icc = new byte[200] });

        string info = Bench.Tool("tiffinfo", "-D", path);
        Assert.Contains("Image Width: 1003 Image Length: 61", info, StringComparison.Ordinal);
        Assert.Contains("Resolution: 720, 360 pixels/inch", info, StringComparison.Ordinal);
        Assert.Contains(Invariant($"Bits/Sample: {bits}"), info, StringComparison.Ordinal);
        Assert.Contains("min-is-white", info, StringComparison.Ordinal);
        Assert.Contains("Ink Names: Light Cyan", info, StringComparison.Ordinal);
        Assert.Contains("Rows/Strip: 16", info, StringComparison.Ordinal);
        Assert.Contains("ImageDescription: Invented, sheet 1 of 1", info, StringComparison.Ordinal);
        Assert.Contains("Software: Laydown", info, StringComparison.Ordinal);
        Assert.Contains("ICC Profile: <present>, 200 bytes", info, StringComparison.Ordinal);
        Assert.DoesNotContain("arning", info, StringComparison.Ordinal);
        Assert.Contains("<BigTIFF>", Bench.Tool("tiffdump", path), StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Kinds))]
    public void Libtiff_finds_no_difference_to_its_own_copy_and_one_to_a_changed_dot(int bits, DotPacking packing)
    {
        using Bench bench = new();
        string path = Path.Combine(bench.Pages, "dots.tif"), other = Path.Combine(bench.Pages, "other.tif"), copy = Path.Combine(bench.Pages, "copy.tif");
        DotHeader header = DotPictures.Header(1003, 61, bits, packing);
        DotPictures.Write(path, header);
        string coding = packing switch { DotPacking.None => "none", DotPacking.PackBits => "packbits", _ => "zip" };
        Bench.Tool("tiffcp", "-c", "lzw", "-r", "7", path, other);
        Bench.Tool("tiffcp", "-c", coding, "-r", "16", other, copy);
        Assert.Equal("", Bench.Tool("tiffcmp", path, copy));

        using (DotTiffWriter writer = DotTiffWriter.Create(other, header))
        {
            for (int strip = 0; strip < header.Strips; strip++)
            {
                byte[] rows = DotPictures.Strip(header, strip);
                rows[5] ^= (byte)(strip == 2 ? 0x10 : 0);
                writer.Write(strip, rows);
            }

            writer.Finish();
        }

        // It ends with an error where a pixel differs.
        Assert.Throws<Xunit.Sdk.TrueException>(() => Bench.Tool("tiffcmp", path, other));
    }

    [Theory, MemberData(nameof(Kinds))]
    public void Vips_sees_every_dot_with_bare_sheet_as_white(int bits, DotPacking packing)
    {
        using Bench bench = new();
        string path = Path.Combine(bench.Pages, "dots.tif");
        DotPictures.Write(path, DotPictures.Header(203, 61, bits, packing));
        (byte[] pixels, int width, int height, int bands) = Bench.Vips(path);
        Assert.Equal((203, 61, 1), (width, height, bands));
        for (int at = 0; at < pixels.Length; at++)
            Assert.Equal(255 - (DotPictures.Code(at / width, at % width, bits) * 255 / ((1 << bits) - 1)), pixels[at]);
    }

    [Theory, MemberData(nameof(Kinds))]
    public void ImageMagick_takes_the_file(int bits, DotPacking packing)
    {
        using Bench bench = new();
        string path = Path.Combine(bench.Pages, "dots.tif");
        DotPictures.Write(path, DotPictures.Header(203, 61, bits, packing));
        Assert.Equal(Invariant($"203x61 {bits} 720x360"), Bench.Tool("identify", "-format", "%wx%h %z %xx%y", path).Replace(" PixelsPerInch", "", StringComparison.Ordinal));
    }

    [Theory, MemberData(nameof(Kinds))]
    public void Another_library_reads_the_same_bytes_of_each_strip(int bits, DotPacking packing)
    {
        using Bench bench = new();
        string path = Path.Combine(bench.Pages, "dots.tif");
        DotHeader header = DotPictures.Header(1003, 61, bits, packing);
        DotPictures.Write(path, header);
        using Tiff tiff = Tiff.Open(path, "r");
        Assert.Equal(header.Strips, tiff.NumberOfStrips());
        for (int strip = 0; strip < header.Strips; strip++)
        {
            byte[] read = new byte[header.BytesOf(strip)];
            Assert.Equal(read.Length, tiff.ReadEncodedStrip(strip, read, 0, read.Length));
            Assert.Equal(DotPictures.Strip(header, strip), read);
        }
    }

    [Theory, MemberData(nameof(Kinds))]
    public void The_reader_takes_a_copy_that_libtiff_wrote(int bits, DotPacking packing)
    {
        using Bench bench = new();
        string path = Path.Combine(bench.Pages, "dots.tif"), copy = Path.Combine(bench.Pages, "copy.tif");
        DotHeader header = DotPictures.Header(1003, 61, bits, packing);
        DotPictures.Write(path, header);
        string coding = packing switch { DotPacking.None => "none", DotPacking.PackBits => "packbits", _ => "zip:p1" };
        Bench.Tool("tiffcp", "-8", "-c", coding, "-r", "9", path, copy);
        using DotTiffReader reader = DotTiffReader.Open(copy).Value;
        byte[] row = new byte[header.RowBytes];
        for (int y = 0; y < 61; y++)
        {
            reader.ReadRow(y, 0, 1003, row);
            Assert.Equal(DotPictures.Strip(header, y / 16).AsSpan(y % 16 * header.RowBytes, header.RowBytes).ToArray(), row);
        }
    }

    [Fact]
    public void Contone_written_by_the_library_reads_back()
    {
        using Bench bench = new();
        string path = Path.Combine(bench.Pages, "contone.tif");
        byte[] pixels = new byte[300 * 200 * 5];
        new Random(5).NextBytes(pixels);
        using (FileStream stream = File.Create(path))
        {
            using ContoneTiffWriter writer = new(stream, "contone.tif", new(300, 200, 120, ["C", "M", "Y", "K", "W"], "test", null));
            writer.WriteBand(pixels, 200);
            writer.Finish();
        }

        using ContoneTiffReader reader = ContoneTiffReader.Open(path).Value;
        Assert.Equal((300, 200, 5, 120.0), (reader.Columns, reader.Rows, reader.Inks, reader.Ppi));
        Assert.Equal(["C", "M", "Y", "K", "W"], reader.InkNames);
        byte[] part = new byte[50 * 5];
        for (int row = 0; row < 200; row++)
        {
            reader.ReadRow(row, 17, part);
            Assert.Equal(pixels.AsSpan(((row * 300) + 17) * 5, part.Length).ToArray(), part);
        }
    }
}
