using System.IO.Compression;
using System.Text;
using Laydown.Artwork.Pages;
using Laydown.Intake.Artwork;
using Laydown.Measures;
using Laydown.Shop.Artwork;
using NetVips;
using Xunit;

namespace Laydown.Edges.Tests.Artwork;

/// <summary>Image files that lie, break off or unpack without end: refused in words when measured and when streamed, with nothing left behind; odd ones that are sound are taken.</summary>
public sealed class ImageHostileRefusalTests : IDisposable
{
    private readonly WorkFolder work = new();

    public static TheoryData<string, string> Lies() => new()
    {
        { "longer than its strips", "data|strips" }, { "wider than its strips", "data|strips" }, { "a strip missing", "strips" }, { "a strip beyond the end", "strips" },
        { "strips over one another", "strips" }, { "a strip cut short", "data|strips" }, { "a tile missing", "strips" }, { "floating point", "SampleFormat" },
        { "floating point that is no number", "SampleFormat" }, { "signed numbers", "SampleFormat" }, { "numbers of 32 bits", "SampleFormat" }, { "six channels", "SamplesPerPixel" },
        { "places without end", "strips|data" },
    };

    [Theory, MemberData(nameof(Lies))]
    public async Task A_TIFF_that_lies_is_refused_when_measured_and_when_streamed(string lie, string fields)
    {
        string path = work.Write("lie.tif", Lie(lie));
        var read = await work.Reader.ReadAsync(path, CancellationToken.None);
        var fault = Assert.Single(read.Faults);
        Assert.Equal("lie.tif", fault.File);
        Assert.Contains(fields.Split('|'), f => fault.Field.Contains(f, StringComparison.Ordinal));
        Assert.NotEmpty(fault.Wanted);
        await StreamFaultsAsync(path);
    }

    [Theory, InlineData("png"), InlineData("jpg"), InlineData("tif"), InlineData("pdf")]
    public async Task A_file_cut_at_any_tenth_is_refused_when_measured_and_when_streamed(string kind)
    {
        byte[] whole = kind == "pdf"
            ? HandPdf.Page("/MediaBox[0 0 200 100]", "", "0 0 0 1 k 10 10 50 50 re f")
            : File.ReadAllBytes(Noise("whole." + kind));
        for (int tenth = 1; tenth < 10; tenth++)
        {
            string path = work.Write("cut." + kind, whole[..(whole.Length * tenth / 10)]);
            Assert.NotEmpty((await work.Reader.ReadAsync(path, CancellationToken.None)).Faults);
            await StreamFaultsAsync(path);
        }
    }

    [Fact]
    public async Task A_file_that_breaks_off_while_it_is_read_is_a_fault_of_the_stream_and_of_every_read()
    {
        // So a medium fails that could still be opened: the second half is gone once rows are asked for. Tried again where the picture was done by then.
        for (bool late = true; late;)
        {
            string path = Noise("gone.tif", 3000, 2000);
            await using var whole = (await new PlateStream(work.Limits).OpenAsync(WorkFolder.Request(path, 3000, 2000, 300), CancellationToken.None)).Value;
            using (var file = File.OpenWrite(path))
                file.SetLength(file.Length / 2);
            late = whole.Ended.IsCompleted;
            if (late)
                continue;
            Assert.Equal("gone.tif", Assert.Single(await whole.Ended).File);
            Assert.Throws<InvalidDataException>(() => whole.Source.ReadRow(0, 1999, 0, new ushort[10]));
        }
    }

    [Theory, InlineData("png-rows"), InlineData("png-words"), InlineData("png-profile"), InlineData("tiff-strip")]
    public async Task What_unpacks_to_far_more_than_its_pixels_costs_no_more_than_its_pixels(string kind)
    {
        byte[] bomb = Zlib(new byte[64 << 20]);
        byte[] rows = Zlib(new byte[10 * 31]);
        byte[] bytes = kind switch
        {
            "png-rows" => Png(10, 10, bomb),
            "png-words" => Png(10, 10, rows, ("zTXt", [.. Encoding.ASCII.GetBytes("Comment\0\0"), .. bomb])),
            "png-profile" => Png(10, 10, rows, ("iCCP", [.. Encoding.ASCII.GetBytes("icc\0\0"), .. bomb])),
            _ => new HandTiff { Width = 10, Length = 10, Compression = 8 }.Of(bomb),
        };
        string path = work.Write(kind.StartsWith("png", StringComparison.Ordinal) ? "bomb.png" : "bomb.tif", bytes);
        var read = await work.Reader.ReadAsync(path, CancellationToken.None);
        if (read.IsTaken)
            Assert.Equal((10, 10), (read.Value.Pages[0].PixelWidth, read.Value.Pages[0].PixelHeight));
        else
            Assert.NotEmpty(read.Faults);
    }

    [Fact]
    public async Task A_picture_with_less_than_its_pixels_is_refused()
    {
        string path = work.Write("less.png", Png(100, 100, Zlib(new byte[310])));
        Assert.NotEmpty((await work.Reader.ReadAsync(path, CancellationToken.None)).Faults);
        await StreamFaultsAsync(path);
    }

    [Fact]
    public async Task One_bit_palette_and_big_tiled_files_come_with_the_values_they_hold()
    {
        // 1 bit, 0 = black: black ink alone.
        string bits = work.Write("bits.tif", new HandTiff { Width = 16, Length = 1, Samples = 1, Bits = 1, Photometric = 1 }.Of([0xF0, 0x0F]));
        Assert.Equal(Enumerable.Range(0, 16).Select(x => x is >= 4 and < 12 ? 65535 : 0), await RowAsync(bits, 16, 3));

        // The same the other way round.
        string white = work.Write("white.tif", new HandTiff { Width = 16, Length = 1, Samples = 1, Bits = 1, Photometric = 0 }.Of([0xF0, 0x0F]));
        Assert.Equal(Enumerable.Range(0, 16).Select(x => x is >= 4 and < 12 ? 0 : 65535), await RowAsync(white, 16, 3));

        // A palette of white and red: white is bare, red is not.
        long[] palette = new long[768];
        (palette[0], palette[256], palette[512], palette[1]) = (65535, 65535, 65535, 65535);
        string colours = work.Write("palette.tif", new HandTiff { Width = 4, Length = 1, Samples = 1, Photometric = 3, More = [(320, 3, palette)] }.Of([0, 1, 0, 1]));
        int[] magenta = await RowAsync(colours, 4, 1);
        Assert.Equal((0, 0), (magenta[0], magenta[2]));
        Assert.True(magenta[1] > 50_000 && magenta[3] > 50_000);

        // Big TIFF in tiles, CMYK: the values as they are.
        string tiled = work.Write("tiled.tif", Tiles());
        Assert.Equal(Enumerable.Range(0, 150).Select(x => x * 257), await RowAsync(tiled, 150, 0));
        Assert.True((await work.Reader.ReadAsync(tiled, CancellationToken.None)).IsTaken);
    }

    [Fact]
    public async Task A_CMYK_JPEG_with_inverted_values_comes_as_the_inks_it_means()
    {
        using var ink = (Image.Black(16, 16, bands: 4) + new[] { 20, 200, 40, 90 }).Cast(Enums.BandFormat.Uchar).Copy(interpretation: Enums.Interpretation.Cmyk, xres: 1, yres: 1);
        ink.Jpegsave(work.File("ink.jpg"), q: 100);

        // The writer marks the file as inverted by its Adobe segment, and stores 255 − ink: the third program reads what is really stored.
        Assert.Contains("Adobe", Encoding.Latin1.GetString(await File.ReadAllBytesAsync(work.File("ink.jpg"))), StringComparison.Ordinal);
        for (int plate = 0; plate < 4; plate++)
            Assert.All(await RowAsync(work.File("ink.jpg"), 16, plate), v => Assert.InRange(v / 257.0, new[] { 20, 200, 40, 90 }[plate] - 2, new[] { 20, 200, 40, 90 }[plate] + 2));
    }

    [Theory, InlineData("png"), InlineData("pdf"), InlineData("svg")]
    public async Task Cancelled_at_every_stage_a_stream_ends_and_leaves_nothing(string kind)
    {
        string path = kind switch
        {
            "png" => Noise("stop.png", 1500, 1000),
            "svg" => work.Write("stop.svg", Encoding.UTF8.GetBytes("<svg xmlns='http://www.w3.org/2000/svg' width='100mm' height='66mm' viewBox='0 0 50 33'><circle r='20' cx='20' cy='20' fill='red'/></svg>")),
            _ => work.Write("stop.pdf", HandPdf.Page("/MediaBox[0 0 300 200]", "", string.Concat(Enumerable.Repeat("0 0 1 0 k 0 0 200 100 re f\n", 20_000)))),
        };
        for (int after = 0; after < 400; after = (after * 2) + 5)
        {
            using var stop = new CancellationTokenSource();
            if (after == 0)
                await stop.CancelAsync();
            else
                stop.CancelAfter(after);
            try
            {
                var open = await new PlateStream(work.Limits).OpenAsync(WorkFolder.Request(path, 3000, 2000, 720), stop.Token);
                await using var plates = open.Value;
                ushort[] row = new ushort[3000];
                for (int y = 0; y < 2000; y++)
                    plates.Source.ReadRow(0, y, 0, row);
                Assert.Empty(await plates.Ended);
            }
            catch (OperationCanceledException)
            {
                Assert.True(stop.IsCancellationRequested);
            }

            Assert.Empty(Directory.Exists(work.Scratch) ? Directory.GetFileSystemEntries(work.Scratch) : []);
        }
    }

    [Theory, InlineData("png"), InlineData("pdf")]
    public async Task Without_leave_or_room_for_scratch_files_the_disk_is_named(string kind)
    {
        string path = kind == "png" ? Noise("page.png") : work.Write("page.pdf", HandPdf.Page("/MediaBox[0 0 200 100]", "", "0 0 0 1 k 10 10 50 50 re f"));
        var limits = new IntakeLimits(Path.Combine(work.Write("a-file", [1]), "scratch"));
        var open = await new PlateStream(limits).OpenAsync(WorkFolder.Request(path, 200, 100, 72), CancellationToken.None);
        Assert.Equal("disk", Assert.Single(open.Faults).Field);
    }

    public void Dispose() => work.Dispose();

    private static byte[] Lie(string lie)
    {
        byte[][] strips = [.. Enumerable.Range(0, 8).Select(n => Enumerable.Range(0, 3000).Select(x => (byte)((x * 7) + n)).ToArray())];
        byte[] values = new byte[9 * 3 * 4];
        float[] floats = lie == "floating point" ? [0, 0.25f, 0.5f, 1, 0, 0, 0, 0, 0] : [0, float.NaN, float.PositiveInfinity, float.NegativeInfinity, 1e30f, -5, 0, 0, 0];
        Buffer.BlockCopy(floats.SelectMany(f => Enumerable.Repeat(f, 3)).ToArray(), 0, values, 0, values.Length);
        return lie switch
        {
            "longer than its strips" => new HandTiff { Length = 800 }.Of(strips),
            "wider than its strips" => new HandTiff { Width = 1000 }.Of(strips),
            "a strip missing" => new HandTiff { Offsets = o => [.. o[..3], 0, .. o[4..]], Counts = c => [.. c[..3], 0, .. c[4..]] }.Of(strips),
            "a strip beyond the end" => new HandTiff { Offsets = o => [.. o[..3], 100_000_000, .. o[4..]] }.Of(strips),
            "strips over one another" => new HandTiff { Offsets = o => [.. o.Select(_ => o[0])] }.Of(strips),
            "a strip cut short" => new HandTiff { Counts = c => [.. c[..3], 1500, .. c[4..]] }.Of(strips),
            "a tile missing" => Tiles(missing: true),
            "floating point" or "floating point that is no number" => new HandTiff { Width = 9, Length = 1, Bits = 32, SampleFormat = 3 }.Of(values),
            "signed numbers" => new HandTiff { Width = 18, Length = 1, Bits = 16, SampleFormat = 2 }.Of(values),
            "numbers of 32 bits" => new HandTiff { Width = 9, Length = 1, Bits = 32 }.Of(values),
            "six channels" => new HandTiff { Width = 18, Length = 1, Samples = 6, Photometric = 5, More = [(332, 3, [2]), (334, 3, [6])] }.Of(values),
            "places without end" => new HandTiff { Offsets = o => [.. Enumerable.Repeat(o[0], 4000)], Counts = c => [.. Enumerable.Repeat(c[0], 4000)] }.Of(strips),
            _ => throw new ArgumentException(lie, nameof(lie)),
        };
    }

    /// <summary>150 × 100 pixels of CMYK in six tiles, cyan = column.</summary>
    private static byte[] Tiles(bool missing = false)
    {
        byte[] Tile(int n) => [.. Enumerable.Range(0, 64 * 64).SelectMany(at => new byte[] { (byte)(((n % 3) * 64) + (at % 64)), (byte)(at / 64), 7, 0 })];
        var tiff = new HandTiff { Width = 150, Length = 100, Samples = 4, Photometric = 5, Big = true, Tile = 64 };
        if (missing)
            tiff = new HandTiff { Width = 150, Length = 100, Samples = 4, Photometric = 5, Big = true, Tile = 64, Offsets = o => [.. o[..4], 0, .. o[5..]], Counts = c => [.. c[..4], 0, .. c[5..]] };
        return tiff.Of([.. Enumerable.Range(0, 6).Select(Tile)]);
    }

    private static byte[] Zlib(byte[] bytes)
    {
        using var packed = new MemoryStream();
        using (var deflate = new ZLibStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
            deflate.Write(bytes);
        return packed.ToArray();
    }

    private static byte[] Png(int width, int height, byte[] rows, params (string Type, byte[] Data)[] before) => ArtworkRefusalTests.Png(width, height, rows, before);

    private async Task<int[]> RowAsync(string path, int width, int plate)
    {
        var open = await new PlateStream(work.Limits).OpenAsync(WorkFolder.Request(path, 4000, 4000, 720) with { OwnResolution = true }, CancellationToken.None);
        Assert.True(open.IsTaken, open.IsTaken ? "" : string.Join("\n", open.Faults));
        await using var plates = open.Value;
        Assert.Equal(width, plates.Columns);
        ushort[] row = new ushort[width];
        plates.Source.ReadRow(plate, 0, 0, row);
        Assert.Empty(await plates.Ended);
        return [.. row.Select(v => (int)v)];
    }

    private async Task StreamFaultsAsync(string path)
    {
        var open = await new PlateStream(work.Limits).OpenAsync(WorkFolder.Request(path, 100, 80, 72), CancellationToken.None);
        if (open.IsTaken)
        {
            await using var plates = open.Value;
            Assert.NotEmpty(await plates.Ended);
            Assert.Throws<InvalidDataException>(() => plates.Source.ReadRow(0, 0, 0, new ushort[1]));
        }

        Assert.Empty(Directory.Exists(work.Scratch) ? Directory.GetFileSystemEntries(work.Scratch) : []);
    }

    private string Noise(string name, int width = 200, int height = 100)
    {
        using var noise = Image.Gaussnoise(width, height, sigma: 50, mean: 128, seed: 7).Cast(Enums.BandFormat.Uchar);
        using var picture = noise.Bandjoin(noise.Rot180(), noise.Invert()).Copy(interpretation: Enums.Interpretation.Srgb);
        picture.WriteToFile(work.File(name));
        return work.File(name);
    }
}
