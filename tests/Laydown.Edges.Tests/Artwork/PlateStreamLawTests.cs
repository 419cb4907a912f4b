using Laydown.Intake.Artwork;
using Laydown.Measures;
using Laydown.Raster.Tiles;
using Laydown.Shop.Artwork;
using NetVips;
using Xunit;

namespace Laydown.Edges.Tests.Artwork;

/// <summary>Laws of plates that are read while they are made: the same values as the whole page, in any order, from any thread; nothing left behind.</summary>
public sealed class PlateStreamLawTests : IDisposable
{
    private readonly WorkFolder work = new();

    [Theory, InlineData(0), InlineData(11)]
    public async Task A_pdf_streams_the_plates_of_the_rendered_page(double bleedMm)
    {
        string pdf = Strips();
        var request = WorkFolder.Request(pdf, 311, 173, 100, bleedMm);
        using var page = (await work.Renderer.RenderAsync(request, CancellationToken.None)).Value;

        await using var open = await OpenAsync(request);

        Assert.Equal(page.Plates, open.Names);
        Assert.Equal((page.Width, page.Height), (open.Columns, open.Rows));
        foreach (var (name, ink) in open.Names.Select((n, i) => (n, i)))
            Assert.Equal(WorkFolder.Plate(page, name), All(open.Source, ink).Select(v => (byte)(v / 257)));
        Assert.Contains(All(open.Source, open.Names.ToList().IndexOf("W")), v => v > 30_000);
        Assert.Empty(await open.Ended);
    }

    [Fact]
    public async Task Rows_are_read_while_the_page_is_still_being_made()
    {
        // A page that takes long at its lower end: its upper rows must not wait for it.
        var request = WorkFolder.Request(SlowPage(), 6000, 6000, 720);
        await using var open = await OpenAsync(request);
        ushort[] row = new ushort[6000];
        open.Source.ReadRow(0, 0, 0, row);
        bool early = !open.Ended.IsCompleted;
        open.Source.ReadRow(0, 5999, 0, row);
        Assert.Empty(await open.Ended);
        Assert.True(early, "The first row came only with the last.");
    }

    [Theory, InlineData("png", false), InlineData("alpha.png", false), InlineData("svg", false), InlineData("pdf", true)]
    public async Task Any_cut_from_any_thread_gives_the_same_values(string kind, bool named)
    {
        string path = kind == "pdf" ? Strips() : Picture(kind);
        var request = WorkFolder.Request(path, 240, 140, 72, 20 * 25.4 / 72);
        await using var open = await OpenAsync(request);
        ushort[][] whole = [.. Enumerable.Range(0, open.Names.Count).Select(i => All(open.Source, i))];
        Assert.Equal(named ? 5 : kind is "png" ? 4 : 5, whole.Length);
        await Task.WhenAll(Enumerable.Range(0, 4).Select(worker => Task.Run(() =>
        {
            var chance = new Random(worker);
            for (int n = 0; n < 300; n++)
            {
                int ink = chance.Next(whole.Length), y = chance.Next(140), x = chance.Next(240);
                ushort[] part = new ushort[chance.Next(1, 241 - x)];
                open.Source.ReadRow(ink, y, x, part);
                Assert.Equal(whole[ink].AsSpan((y * 240) + x, part.Length).ToArray(), part);
            }
        })));

        // Margins mirror the edges in every plate.
        Assert.All(whole, plate => Assert.All(Enumerable.Range(0, 240 * 140), at =>
        {
            int x = at % 240, y = at / 240;
            int insideX = x < 20 ? 39 - x : x >= 220 ? 439 - x : x, insideY = y < 20 ? 39 - y : y >= 120 ? 239 - y : y;
            Assert.Equal(plate[(insideY * 240) + insideX], plate[at]);
        }));
        Assert.Contains(whole, plate => plate.Distinct().Count() > 20);
    }

    [Theory, InlineData("png"), InlineData("alpha.png"), InlineData("svg")]
    public async Task Sixteen_bits_agree_with_the_rendered_page_to_its_rounding(string kind)
    {
        var request = WorkFolder.Request(Picture(kind), 200, 100, 72);
        using var page = (await work.Renderer.RenderAsync(request, CancellationToken.None)).Value;
        await using var open = await OpenAsync(request);
        Assert.Equal(page.Plates, open.Names);

        // Half a code of 255, and as much again where alpha is rounded before it is multiplied.
        double tolerance = kind == "png" ? 129 : 257;
        for (int ink = 0; ink < open.Names.Count; ink++)
        {
            byte[] eight = WorkFolder.Plate(page, open.Names[ink]);
            ushort[] sixteen = All(open.Source, ink);
            for (int at = 0; at < eight.Length; at++)
                Assert.InRange(sixteen[at] - (eight[at] * 257.0), -tolerance, tolerance);
        }
    }

    [Fact]
    public async Task A_coarse_image_keeps_its_own_pixels_where_the_request_says_so()
    {
        // 100 × 50 pixels on 200 × 100: halved twice over; alike to the last bit with the file where no colour changes.
        using var ink = (Image.Xyz(100, 50)[0] * 2).Bandjoin(Image.Xyz(100, 50)[1] * 3, Image.Black(100, 50) + 9, Image.Black(100, 50) + 77)
            .Cast(Enums.BandFormat.Uchar).Copy(interpretation: Enums.Interpretation.Cmyk, xres: 1, yres: 1);
        ink.WriteToFile(work.File("ink.tif"));
        var request = WorkFolder.Request(work.File("ink.tif"), 220, 120, 72, 10 * 25.4 / 72) with { OwnResolution = true };
        await using var open = await OpenAsync(request);
        Assert.Equal((110, 60), (open.Columns, open.Rows));
        ushort[] cyan = All(open.Source, 0), magenta = All(open.Source, 1);
        for (int y = 0; y < 50; y++)
        {
            for (int x = 0; x < 100; x++)
                Assert.Equal((x * 2 * 257, y * 3 * 257), (cyan[((y + 5) * 110) + x + 5], magenta[((y + 5) * 110) + x + 5]));
        }

        // Finer than asked on one axis alone: that axis comes at the resolution asked.
        await using var narrow = await OpenAsync(WorkFolder.Request(work.File("ink.tif"), 40, 100, 72) with { OwnResolution = true });
        Assert.Equal((40, 50), (narrow.Columns, narrow.Rows));
    }

    [Fact]
    public async Task Sixteen_bit_sources_keep_more_than_eight()
    {
        using var ramp = (Image.Xyz(2000, 4)[0] * 16 + 20_000).Cast(Enums.BandFormat.Ushort);
        using var ink = ramp.Bandjoin(ramp, ramp, ramp).Copy(interpretation: Enums.Interpretation.Cmyk, xres: 1, yres: 1);
        ink.WriteToFile(work.File("deep.tif"));
        await using var open = await OpenAsync(WorkFolder.Request(work.File("deep.tif"), 2000, 4, 72));
        Assert.Equal(Enumerable.Range(0, 2000).Select(x => (ushort)(20_000 + (16 * x))), All(open.Source, 0).Take(2000));
    }

    [Fact]
    public async Task A_large_page_comes_in_strips_that_meet()
    {
        string pdf = Strips();
        var request = WorkFolder.Request(pdf, 400, 300, 100, 7);
        await using var whole = await OpenAsync(request);
        await using var strips = (await new PlateStream(work.Limits with { StripPixels = 400 * 70 }).OpenAsync(request, CancellationToken.None)).Value;
        Assert.Equal(whole.Names, strips.Names);
        for (int ink = 0; ink < whole.Names.Count; ink++)
            Assert.Equal(All(whole.Source, ink), All(strips.Source, ink));
        Assert.Empty(await strips.Ended);
    }

    [Theory, InlineData("pdf"), InlineData("png"), InlineData("svg")]
    public async Task Closing_at_any_time_leaves_nothing(string kind)
    {
        string path = kind == "pdf" ? SlowPage() : Picture(kind);
        var open = await OpenAsync(WorkFolder.Request(path, 5000, 5000, 720));
        Assert.NotEmpty(Directory.GetFileSystemEntries(work.Scratch));
        await open.DisposeAsync();
        Assert.Empty(Directory.GetFileSystemEntries(work.Scratch));
        Assert.ThrowsAny<Exception>(() => open.Source.ReadRow(0, 0, 0, new ushort[1]));
    }

    public void Dispose() => work.Dispose();

    private static ushort[] All(ITileSource source, int ink)
    {
        ushort[] all = new ushort[source.Rows * source.Columns];
        for (int row = 0; row < source.Rows; row++)
            source.ReadRow(ink, row, 0, all.AsSpan(row * source.Columns, source.Columns));
        return all;
    }

    private async Task<OpenPlates> OpenAsync(RenderRequest request)
    {
        var open = await new PlateStream(work.Limits).OpenAsync(request, CancellationToken.None);
        Assert.True(open.IsTaken, open.IsTaken ? "" : string.Join("\n", open.Faults));
        return open.Value;
    }

    private string Strips()
    {
        string strips = string.Concat(Enumerable.Range(0, 50).Select(i => Invariant($"{i / 50.0:0.##} {1 - (i / 50.0):0.##} {i % 7 / 7.0:0.##} 0 k {i * 4} {i} 4 100 re f ")));
        return work.Write("strips.pdf", HandPdf.Page("/MediaBox[0 0 200 100]", "/ColorSpace<</W " + HandPdf.Separation("White", "0 0 0 0").Replace("White", "W", StringComparison.Ordinal) + ">>", strips + "/W cs 0.6 scn 20 20 9 70 re f 30 5 m 90 95 l 120 40 l f"));
    }

    private string SlowPage() =>
        work.Write("slow.pdf", HandPdf.Page("/MediaBox[0 0 600 600]", "", "1 0 0 0 k 0 500 600 100 re f " + string.Concat(Enumerable.Range(0, 3000).Select(n => Invariant($"0 {n % 10 / 10.0} 0 0 k 0 {n % 300} m 600 {n % 200} l 300 {n % 250} l f\n")))));

    private string Picture(string kind)
    {
        string path = work.File("picture." + kind);
        if (kind == "svg")
        {
            string strips = string.Concat(Enumerable.Range(0, 50).Select(i => Invariant($"""<rect x="{i * 4}" y="{i}" width="4" height="100" fill="rgb({i * 5},{255 - (i * 5)},{i % 7 * 36})"/>""")));
            File.WriteAllText(path, Invariant($"""<svg xmlns="http://www.w3.org/2000/svg" width="200pt" height="100pt" viewBox="0 0 200 100">{strips}</svg>"""));
            return path;
        }

        using var places = Image.Xyz(200, 100);
        using var colours = (places[0] * 1.2).Bandjoin(places[1] * 2.5, (places[0] + places[1]) * 0.8).Cast(Enums.BandFormat.Uchar).Copy(interpretation: Enums.Interpretation.Srgb, xres: 72 / 25.4, yres: 72 / 25.4);
        using var picture = kind.StartsWith("alpha", StringComparison.Ordinal) ? colours.Bandjoin((places[0] * 1.25).Cast(Enums.BandFormat.Uchar)) : colours.Copy();
        picture.WriteToFile(path);
        return path;
    }
}
