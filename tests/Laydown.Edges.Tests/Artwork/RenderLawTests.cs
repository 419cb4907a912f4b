using Laydown.Measures;
using Laydown.Shop.Artwork;
using NetVips;
using Xunit;

namespace Laydown.Edges.Tests.Artwork;

/// <summary>Laws of rendered pages: layout of the raw file, mirrored bleed, alpha, repeatability, previews.</summary>
public sealed class RenderLawTests : IDisposable
{
    private readonly WorkFolder work = new();

    [Fact]
    public async Task The_raw_file_holds_every_plate_whole_and_goes_when_disposed()
    {
        string pdf = work.Write("page.pdf", HandPdf.Page("/MediaBox[0 0 200 100]", "/ColorSpace<</W " + HandPdf.Separation("White", "0 0 0 0") + ">>", "1 0 0 0 k 0 0 200 100 re f /W cs 1 scn 0 0 9 9 re f"));
        var page = (await work.Renderer.RenderAsync(new RenderRequest(pdf, 1, new SizeMm(101.3, 57.9), 3, 150, WorkFolder.CmykProfile), CancellationToken.None)).Value;
        Assert.Equal(((int)Math.Round(101.3 * 150 / 25.4), (int)Math.Round(57.9 * 150 / 25.4)), (page.Width, page.Height));
        Assert.Equal(page.Plates.Count * (long)page.Width * page.Height, new FileInfo(page.RawPath).Length);
        Assert.Equal([page.RawPath], Directory.GetFileSystemEntries(work.Scratch));
        page.Dispose();
        Assert.Empty(Directory.GetFileSystemEntries(work.Scratch));
    }

    [Theory, InlineData("pdf"), InlineData("png"), InlineData("svg")]
    public async Task Missing_bleed_mirrors_the_edges_in_every_plate(string kind)
    {
        string path = Gradient(kind);
        var request = WorkFolder.Request(path, 240, 140, 72, 20 * 25.4 / 72);
        using var page = (await work.Renderer.RenderAsync(request, CancellationToken.None)).Value;
        foreach (string name in page.Plates)
        {
            byte[] plate = WorkFolder.Plate(page, name);
            byte At(int x, int y) => plate[(y * 240) + x];
            for (int y = 0; y < 140; y++)
            {
                for (int x = 0; x < 240; x++)
                {
                    int insideX = x < 20 ? 39 - x : x >= 220 ? 439 - x : x;
                    int insideY = y < 20 ? 39 - y : y >= 120 ? 239 - y : y;
                    Assert.Equal(At(insideX, insideY), At(x, y));
                }
            }
        }

        Assert.Contains(page.Plates, name => WorkFolder.Plate(page, name).Distinct().Count() > 20);
    }

    [Fact]
    public async Task Bleed_that_the_file_has_is_used_and_not_mirrored()
    {
        // Cyan within the trim box, magenta around it out to the bleed box.
        string pdf = work.Write("bleed.pdf", HandPdf.Page("/MediaBox[0 0 260 160]/TrimBox[30 30 230 130]/BleedBox[20 20 240 140]", "", "0 1 0 0 k 0 0 260 160 re f 1 0 0 0 k 30 30 200 100 re f"));
        using var page = (await work.Renderer.RenderAsync(WorkFolder.Request(pdf, 230, 130, 72, 15 * 25.4 / 72), CancellationToken.None)).Value;
        byte[] magenta = WorkFolder.Plate(page, "Magenta"), cyan = WorkFolder.Plate(page, "Cyan");
        Assert.Equal((0, 255), (magenta[(65 * 230) + 115], cyan[(65 * 230) + 115]));

        // 10 units of bleed in the file, the last 5 mirrored from them.
        Assert.All(Enumerable.Range(0, 15), x => Assert.Equal((255, 0), (magenta[(65 * 230) + x], cyan[(65 * 230) + x])));
        Assert.Equal((0, 255), (magenta[(65 * 230) + 15], cyan[(65 * 230) + 15]));
    }

    [Fact]
    public async Task A_page_at_one_tenth_is_scaled_up_axis_by_axis()
    {
        string pdf = work.Write("tenth.pdf", HandPdf.Page("/MediaBox[0 0 40 20]", "", "1 0 0 0 k 0 0 20 20 re f 0 1 0 0 k 20 10 20 10 re f"));
        using var page = (await work.Renderer.RenderAsync(WorkFolder.Request(pdf, 400, 202, 72), CancellationToken.None)).Value;
        byte[] cyan = WorkFolder.Plate(page, "Cyan"), magenta = WorkFolder.Plate(page, "Magenta");
        Assert.Equal(200, Enumerable.Range(0, 400).Count(x => cyan[x] == 255));
        Assert.Equal(101, Enumerable.Range(0, 202).Count(y => magenta[(y * 400) + 399] == 255));
    }

    [Theory, InlineData("pdf"), InlineData("png"), InlineData("svg")]
    public async Task The_same_page_gives_the_same_bytes(string kind)
    {
        string path = Gradient(kind);
        var request = WorkFolder.Request(path, 311, 173, 100, 2);
        using var one = (await work.Renderer.RenderAsync(request, CancellationToken.None)).Value;
        using var other = (await work.Renderer.RenderAsync(request, CancellationToken.None)).Value;
        Assert.Equal(one.Plates, other.Plates);
        Assert.Equal(File.ReadAllBytes(one.RawPath), File.ReadAllBytes(other.RawPath));
    }

    [Theory, InlineData("alpha.png"), InlineData("alpha.tif"), InlineData("alpha.svg")]
    public async Task Inks_are_none_where_alpha_is_none_and_alpha_is_the_last_plate(string name)
    {
        if (name.EndsWith("svg", StringComparison.Ordinal))
        {
            File.WriteAllText(work.File(name), """<svg xmlns="http://www.w3.org/2000/svg" width="100" height="50"><rect x="50" width="50" height="50" fill="#800000"/></svg>""");
        }
        else
        {
            using var clear = Image.Black(50, 50, bands: 4);
            using var full = (Image.Black(50, 50, bands: 4) + new[] { 128, 0, 0, 255 }).Cast(Enums.BandFormat.Uchar);
            using var both = clear.Join(full, Enums.Direction.Horizontal).Copy(interpretation: Enums.Interpretation.Srgb, xres: 1, yres: 1);
            both.WriteToFile(work.File(name));
        }

        using var page = (await work.Renderer.RenderAsync(WorkFolder.Request(work.File(name), 200, 100, 72), CancellationToken.None)).Value;
        Assert.Equal(["Cyan", "Magenta", "Yellow", "Black", "Alpha"], page.Plates);
        foreach (string plate in page.Plates)
        {
            byte[] pixels = WorkFolder.Plate(page, plate);
            Assert.Equal(0, pixels[(50 * 200) + 20]);
            Assert.Equal(plate == "Alpha" ? 255 : pixels[(10 * 200) + 190], pixels[(50 * 200) + 180]);
        }

        Assert.True(WorkFolder.Plate(page, "Magenta")[(50 * 200) + 180] > 150);
    }

    [Fact]
    public async Task Cmyk_without_a_profile_passes_as_it_is_and_grey_is_black_ink_alone()
    {
        using var ink = (Image.Black(20, 10, bands: 4) + new[] { 10, 200, 30, 77 }).Cast(Enums.BandFormat.Uchar).Copy(interpretation: Enums.Interpretation.Cmyk, xres: 1, yres: 1);
        ink.WriteToFile(work.File("ink.tif"));
        using var page = (await work.Renderer.RenderAsync(WorkFolder.Request(work.File("ink.tif"), 60, 30, 72), CancellationToken.None)).Value;
        Assert.Equal([10, 200, 30, 77], page.Plates.Select(p => (int)WorkFolder.Plate(page, p)[(15 * 60) + 30]));

        using var grey = (Image.Black(20, 10) + 55).Cast(Enums.BandFormat.Uchar).Copy(interpretation: Enums.Interpretation.Bw, xres: 1, yres: 1);
        grey.WriteToFile(work.File("grey.png"));
        using var black = (await work.Renderer.RenderAsync(WorkFolder.Request(work.File("grey.png"), 60, 30, 72), CancellationToken.None)).Value;
        Assert.Equal([0, 0, 0, 200], black.Plates.Select(p => (int)WorkFolder.Plate(black, p)[(15 * 60) + 30]));
    }

    [Theory, InlineData("pdf"), InlineData("png"), InlineData("svg"), InlineData("tif")]
    public async Task A_preview_is_a_whole_srgb_png_of_the_media_box(string kind)
    {
        string path = Gradient(kind);
        string png = work.File("previews/one.png");
        var size = await work.Renderer.PreviewAsync(path, 1, 160, png, CancellationToken.None);
        Assert.Equal(200 * 25.4 / 72, size.Value.WidthMm, 0.01);
        Assert.Equal(100 * 25.4 / 72, size.Value.HeightMm, 0.01);
        using var picture = Image.NewFromFile(png);
        Assert.Equal((160, 80), (picture.Width, picture.Height));
        Assert.Equal(Enums.Interpretation.Srgb, picture.Interpretation);
        Assert.Equal([png], Directory.GetFiles(work.File("previews")));
    }

    [Fact]
    public async Task A_preview_that_fails_leaves_the_old_one()
    {
        string old = work.Write("old.png", [1, 2, 3]);
        string bad = work.Write("bad.png", [.. File.ReadAllBytes(Gradient("png"))[..900]]);
        Assert.False((await work.Renderer.PreviewAsync(bad, 1, 100, old, CancellationToken.None)).IsTaken);
        Assert.Equal([1, 2, 3], File.ReadAllBytes(old));
        Assert.DoesNotContain(Directory.GetFiles(work.Folder), f => f.EndsWith(".part", StringComparison.Ordinal));
    }

    public void Dispose() => work.Dispose();

    /// <summary>A picture of 200 × 100 units of 1/72 inch in which no two neighbours are alike for long.</summary>
    private string Gradient(string kind)
    {
        string path = work.File("gradient." + kind);
        if (kind == "pdf")
        {
            string strips = string.Concat(Enumerable.Range(0, 50).Select(i => Invariant($"{i / 50.0:0.##} {1 - (i / 50.0):0.##} {i % 7 / 7.0:0.##} 0 k {i * 4} {i} 4 100 re f ")));
            work.Write("gradient.pdf", HandPdf.Page("/MediaBox[0 0 200 100]", "/ColorSpace<</W " + HandPdf.Separation("White", "0 0 0 0") + ">>", strips + "/W cs 0.6 scn 20 20 9 70 re f"));
        }
        else if (kind == "svg")
        {
            string strips = string.Concat(Enumerable.Range(0, 50).Select(i => Invariant($"""<rect x="{i * 4}" y="{i}" width="4" height="100" fill="rgb({i * 5},{255 - (i * 5)},{i % 7 * 36})"/>""")));
            File.WriteAllText(path, Invariant($"""<svg xmlns="http://www.w3.org/2000/svg" width="200pt" height="100pt" viewBox="0 0 200 100">{strips}</svg>"""));
        }
        else
        {
            using var places = Image.Xyz(200, 100);
            using var picture = (places[0] * 1.2).Bandjoin(places[1] * 2.5, (places[0] + places[1]) * 0.8).Cast(Enums.BandFormat.Uchar).Copy(interpretation: Enums.Interpretation.Srgb, xres: 72 / 25.4, yres: 72 / 25.4);
            picture.WriteToFile(path);
        }

        return path;
    }
}
