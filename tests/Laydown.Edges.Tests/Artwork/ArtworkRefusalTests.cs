using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;
using Laydown.Intake.Artwork;
using Laydown.Measures;
using NetVips;
using Xunit;

namespace Laydown.Edges.Tests.Artwork;

/// <summary>Files that must be refused in words, and odd ones that must not.</summary>
public sealed class ArtworkRefusalTests : IDisposable
{
    private static readonly byte[] OnePage = HandPdf.Page("/MediaBox[0 0 200 100]", "", "0 0 0 1 k 10 10 50 50 re f");
    private readonly WorkFolder work = new();

    [Theory, InlineData("empty.pdf"), InlineData("empty.tif"), InlineData("empty.png"), InlineData("empty.jpg"), InlineData("empty.svg")]
    public async Task A_file_of_zero_bytes_is_refused(string name) =>
        Fault(await ReadAsync(work.Write(name, [])), "length", "0 bytes");

    [Fact]
    public async Task A_file_that_is_not_there_is_refused() => Fault(await ReadAsync(work.File("none.pdf")), "file", "no such file");

    [Fact]
    public async Task Bytes_of_no_known_format_are_refused() =>
        Fault(await ReadAsync(work.Write("words.pdf", Encoding.ASCII.GetBytes(new string('x', 5000)))), "first bytes", "none of the formats");

    [Theory, InlineData("sign.png"), InlineData("sign.tif"), InlineData("sign.svg"), InlineData("sign")]
    public async Task A_pdf_under_another_name_is_refused(string name) =>
        Fault(await ReadAsync(work.Write(name, OnePage)), "file name", "PDF inside");

    [Fact]
    public async Task A_png_named_pdf_is_refused_by_its_bytes()
    {
        string png = Picture("right.png", 8, 8);
        Fault(await ReadAsync(work.Write("wrong.pdf", File.ReadAllBytes(png))), "file name", "PNG inside");
    }

    [Theory, InlineData(0.3), InlineData(0.6), InlineData(0.95)]
    public async Task A_pdf_cut_short_is_refused(double part) =>
        Fault(await ReadAsync(work.Write("cut.pdf", OnePage[..(int)(OnePage.Length * part)])), "end of file", "cut short");

    [Theory]
    [InlineData("cut.png", 0.4), InlineData("cut.png", 0.97), InlineData("cut.jpg", 0.4), InlineData("cut.jpg", 0.97)]
    [InlineData("cut.tif", 0.4), InlineData("cut.tif", 0.97)]
    public async Task An_image_cut_short_is_refused(string name, double part)
    {
        byte[] whole = File.ReadAllBytes(Picture("whole" + Path.GetExtension(name), 400, 300));
        Fault(await ReadAsync(work.Write(name, whole[..(int)(whole.Length * part)])), "data", "damaged or cut short");
    }

    [Fact]
    public async Task A_pdf_locked_with_a_password_is_refused()
    {
        string open = work.Write("open.pdf", OnePage);
        await WorkFolder.RunAsync("qpdf", "", "--encrypt", "tern", "sandpiper", "256", "--", open, work.File("locked.pdf"));
        Fault(await ReadAsync(work.File("locked.pdf")), "Encrypt", "password");
    }

    [Fact]
    public async Task A_pdf_of_100_pages_is_refused_with_its_count() =>
        Fault(await ReadAsync(work.Write("hundred.pdf", HandPdf.Pages(100))), "pages", "100 pages");

    [Fact]
    public async Task A_pdf_with_as_many_pages_as_allowed_is_taken()
    {
        var file = await ReadAsync(work.Write("few.pdf", HandPdf.Pages(3)));
        Assert.Equal(3, file.Value.Pages.Count);
    }

    [Fact]
    public async Task A_page_of_14400_units_is_taken_at_its_true_size()
    {
        var file = await ReadAsync(work.Write("long.pdf", HandPdf.Page("/MediaBox[0 0 14400 720]/UserUnit 2", "", "0 0 0 1 k 0 0 14400 10 re f")));
        Assert.Equal(10_160, file.Value.Pages[0].MediaMm.WidthMm, 6);
        Assert.Equal(508, file.Value.Pages[0].MediaMm.HeightMm, 6);
    }

    [Fact]
    public async Task A_side_longer_than_allowed_is_refused() =>
        Fault(await ReadAsync(work.Write("far.pdf", HandPdf.Page("/MediaBox[0 0 14400 14400]/UserUnit 75000", "", "n"))), "MediaBox × UserUnit", "mm");

    [Fact]
    public async Task An_image_of_one_pixel_is_taken()
    {
        var file = await ReadAsync(Picture("dot.png", 1, 1));
        Assert.Equal((1, 1), (file.Value.Pages[0].PixelWidth, file.Value.Pages[0].PixelHeight));
    }

    [Fact]
    public async Task An_image_of_200_megapixels_is_refused_from_its_header()
    {
        string path = work.Write("bomb.png", PngHeader(20_000, 10_000));
        Fault(await ReadAsync(path), "pixels", "200 Mpx");
        var rendered = await work.Renderer.RenderAsync(WorkFolder.Request(path, 100, 50, 72), CancellationToken.None);
        Assert.Contains(rendered.Faults, f => f.Field == "pixels");
    }

    [Fact]
    public async Task A_missing_Ghostscript_is_named_with_the_package_to_install()
    {
        var limits = work.Limits with { Ghostscript = "no-such-program" };
        string pdf = work.Write("page.pdf", OnePage);
        var rendered = await new PageRenderer(limits).RenderAsync(WorkFolder.Request(pdf, 200, 100, 72), CancellationToken.None);
        var fault = Assert.Single(rendered.Faults);
        Assert.Equal("Ghostscript", fault.Field);
        Assert.Contains("apt install ghostscript", fault.Wanted, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(work.Scratch));
    }

    [Fact]
    public async Task A_page_that_takes_too_long_is_ended()
    {
        var limits = work.Limits with { ChildSeconds = 0.05 };
        string pdf = work.Write("slow.pdf", HandPdf.Page("/MediaBox[0 0 200 100]", "", string.Concat(Enumerable.Repeat("0 0 200 100 re f\n", 200_000))));
        var rendered = await new PageRenderer(limits).RenderAsync(WorkFolder.Request(pdf, 8000, 4000, 2880), CancellationToken.None);
        Assert.Equal("time to render", Assert.Single(rendered.Faults).Field);
        Assert.Empty(Directory.GetFileSystemEntries(work.Scratch));
    }

    [Fact]
    public async Task A_cancelled_rendering_leaves_nothing()
    {
        string pdf = work.Write("slow.pdf", HandPdf.Page("/MediaBox[0 0 200 100]", "", string.Concat(Enumerable.Repeat("0 0 200 100 re f\n", 200_000))));
        using var stop = new CancellationTokenSource(TimeSpan.FromMilliseconds(300));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => work.Renderer.RenderAsync(WorkFolder.Request(pdf, 8000, 4000, 2880), stop.Token));
        Assert.Empty(Directory.GetFileSystemEntries(work.Scratch));
    }

    [Fact]
    public async Task A_page_with_a_damaged_stream_is_refused_when_rendered()
    {
        string pdf = work.Write("damaged.pdf", HandPdf.Of(
            "<</Type/Catalog/Pages 2 0 R>>", "<</Type/Pages/Kids[3 0 R]/Count 1>>",
            "<</Type/Page/Parent 2 0 R/MediaBox[0 0 200 100]/Contents 4 0 R/Resources<<>>>>", HandPdf.Stream("this is not deflated", "/Filter/FlateDecode")));
        var rendered = await work.Renderer.RenderAsync(WorkFolder.Request(pdf, 200, 100, 72), CancellationToken.None);
        Assert.False(rendered.IsTaken);
    }

    [Fact]
    public async Task Endless_forms_end_at_the_limit()
    {
        string pdf = work.Write("loop.pdf", HandPdf.Page("/MediaBox[0 0 200 100]", "/XObject<</F 5 0 R>>", "/F Do", "",
            HandPdf.Stream("/F Do /F Do /F Do", "/Type/XObject/Subtype/Form/BBox[0 0 9 9]/Resources<</XObject<</F 5 0 R>>>>")));
        var read = await new ArtworkReader(work.Limits with { Operations = 10_000 }).ReadAsync(pdf, CancellationToken.None);
        Assert.False(read.IsTaken);
    }

    [Fact]
    public async Task A_page_the_file_does_not_have_is_refused()
    {
        string pdf = work.Write("one.pdf", OnePage);
        var rendered = await work.Renderer.RenderAsync(WorkFolder.Request(pdf, 20, 10, 7.2) with { Page = 2 }, CancellationToken.None);
        Assert.Equal("page", Assert.Single(rendered.Faults).Field);
    }

    public void Dispose() => work.Dispose();

    private Task<Reading<Laydown.Artwork.Pages.ArtworkFile>> ReadAsync(string path) => work.Reader.ReadAsync(path, CancellationToken.None);

    private static void Fault<T>(Reading<T> read, string field, string found)
    {
        var fault = Assert.Single(read.Faults);
        Assert.Contains(field, fault.Field, StringComparison.Ordinal);
        Assert.Contains(found, fault.Found, StringComparison.Ordinal);
        Assert.NotEmpty(fault.Wanted);
    }

    private string Picture(string name, int width, int height)
    {
        using var noise = Image.Gaussnoise(width, height, sigma: 50, mean: 128, seed: 7).Cast(Enums.BandFormat.Uchar);
        using var picture = noise.Bandjoin(noise.Rot180(), noise.Invert()).Copy(interpretation: Enums.Interpretation.Srgb);
        picture.WriteToFile(work.File(name));
        return work.File(name);
    }

    /// <summary>The header of a PNG and nothing behind it but its end: a few bytes that open as a huge picture.</summary>
    private static byte[] PngHeader(int width, int height)
    {
        using var packed = new MemoryStream();
        using (var deflate = new ZLibStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
            deflate.Write(new byte[1000]);
        return Png(width, height, packed.ToArray(), []);
    }

    /// <summary>A PNG of 8-bit RGB around packed rows, with more chunks before them.</summary>
    internal static byte[] Png(int width, int height, byte[] rows, IReadOnlyList<(string Type, byte[] Data)> before)
    {
        using var png = new MemoryStream();
        png.Write([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]);
        byte[] header = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, width);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), height);
        (header[8], header[9]) = (8, 2);
        Chunk(png, "IHDR", header);
        foreach (var (type, data) in before)
            Chunk(png, type, data);
        Chunk(png, "IDAT", rows);
        Chunk(png, "IEND", []);
        return png.ToArray();
    }

    private static void Chunk(MemoryStream png, string type, byte[] data)
    {
        byte[] body = [.. Encoding.ASCII.GetBytes(type), .. data];
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, data.Length);
        png.Write(number);
        png.Write(body);
        BinaryPrimitives.WriteUInt32BigEndian(number, Crc(body));
        png.Write(number);
    }

    private static uint Crc(byte[] bytes)
    {
        uint crc = uint.MaxValue;
        foreach (byte b in bytes)
        {
            crc ^= b;
            for (int bit = 0; bit < 8; bit++)
                crc = (crc & 1) == 1 ? (crc >> 1) ^ 0xEDB88320u : crc >> 1;
        }

        return ~crc;
    }
}
