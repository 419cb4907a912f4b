using BitMiracle.LibTiff.Classic;
using Xunit;

namespace Laydown.Edges.Tests.Artwork;

/// <summary>Plates against a direct run of Ghostscript's separation device, read back by a TIFF library that the product does not use for it.</summary>
public sealed class PlatesReferenceTests : IDisposable
{
    private readonly WorkFolder work = new();

    public static TheoryData<string> Pages() => ["plain", "user-unit", "turned", "device-n", "moved-media", "overprint", "see-through"];

    [Theory, MemberData(nameof(Pages))]
    public async Task Every_pixel_of_every_plate_equals_ghostscripts_own(string which)
    {
        string pdf = work.Write(which + ".pdf", Pdf(which));
        var (width, height) = which switch { "user-unit" => (1200, 800), "turned" => (400, 600), _ => (600, 400) };
        string direct = await DirectAsync(pdf);

        using var page = (await work.Renderer.RenderAsync(WorkFolder.Request(pdf, width, height, 144), CancellationToken.None)).Value;

        Assert.Equal((width, height), (page.Width, page.Height));
        Assert.Equal(["Cyan", "Magenta", "Yellow", "Black", "Cut", "Ocean Blue/2", "White"], page.Plates);
        foreach (string plate in page.Plates)
        {
            byte[] expected = Grey(Path.Combine(direct, Invariant($"plate({plate.Replace("/", "%2F", StringComparison.Ordinal)}).tif")), width, height);
            Assert.Equal(expected.Select(v => (byte)(255 - v)), WorkFolder.Plate(page, plate));
        }

        // The page is not bare: each plate that the page paints holds ink.
        Assert.All(["Cyan", "Magenta", "Cut", "White"], p => Assert.Contains(WorkFolder.Plate(page, p), v => v > 100));
    }

    [Fact]
    public async Task Named_separations_of_a_see_through_page_amid_others_are_kept()
    {
        string resources = "/ColorSpace<</Cut " + HandPdf.Separation("Cut", "0 1 0 0") + ">>/ExtGState<</Clear<</ca 0.5/BM/Multiply>>>>";
        string empty = "<</Type/Page/Parent 2 0 R/MediaBox[0 0 200 100]/Resources<<>>>>";
        string pdf = work.Write("three.pdf", HandPdf.Of(
            "<</Type/Catalog/Pages 2 0 R>>", "<</Type/Pages/Kids[5 0 R 3 0 R 6 0 R]/Count 3>>",
            "<</Type/Page/Parent 2 0 R/MediaBox[0 0 200 100]/Contents 4 0 R/Resources<<" + resources + ">>>>",
            HandPdf.Stream("/Cut cs 1 scn 20 20 50 50 re f /Clear gs 1 0 0 0 k 60 20 50 50 re f"), empty, empty));

        using var page = (await work.Renderer.RenderAsync(WorkFolder.Request(pdf, 200, 100, 72) with { Page = 2 }, CancellationToken.None)).Value;
        Assert.Equal(["Cyan", "Magenta", "Yellow", "Black", "Cut"], page.Plates);
        Assert.Equal(255, WorkFolder.Plate(page, "Cut")[(55 * 200) + 40]);
        using var other = (await work.Renderer.RenderAsync(WorkFolder.Request(pdf, 200, 100, 72) with { Page = 3 }, CancellationToken.None)).Value;
        Assert.All(other.Plates, name => Assert.All(WorkFolder.Plate(other, name), v => Assert.Equal(0, v)));
    }

    [Fact]
    public async Task More_separations_than_the_device_takes_by_itself_are_all_kept()
    {
        var names = Enumerable.Range(1, 25).Select(n => Invariant($"Spot {n:00}")).ToList();
        string spaces = string.Concat(names.Select((n, i) => Invariant($"/S{i} {HandPdf.Separation(n.Replace(" ", "#20", StringComparison.Ordinal), "0 0.5 0 0")}")));
        string content = string.Concat(names.Select((_, i) => Invariant($"/S{i} cs 1 scn {i * 8} 10 8 20 re f\n")));
        string pdf = work.Write("many.pdf", HandPdf.Page("/MediaBox[0 0 200 40]", Invariant($"/ColorSpace<<{spaces}>>"), content));

        using var page = (await work.Renderer.RenderAsync(WorkFolder.Request(pdf, 200, 40, 72), CancellationToken.None)).Value;

        Assert.Equal(names, page.Plates.Skip(4));
        Assert.All(names, (name, i) => Assert.Equal(255, WorkFolder.Plate(page, name)[(20 * 200) + (i * 8) + 4]));
    }

    public void Dispose() => work.Dispose();

    private static byte[] Pdf(string which)
    {
        string entries = which switch
        {
            "user-unit" => "/MediaBox[0 0 300 200]/UserUnit 2",
            "turned" => "/MediaBox[0 0 300 200]/Rotate 90",
            "moved-media" => "/MediaBox[-40 15 260 215]",
            _ => "/MediaBox[0 0 300 200]",
        };
        string spaces = "/ColorSpace<</White " + HandPdf.Separation("White", "0.2 0 0 0") + "/Cut " + HandPdf.Separation("Cut", "0 1 0 0")
            + "/Odd " + HandPdf.Separation("Ocean#20Blue#2f2", "1 0.4 0 0")
            + "/Both [/DeviceN [/Cyan /White] /DeviceCMYK 5 0 R]>>/ExtGState<</Over<</OP true/op true/OPM 1>>/Clear<</ca 0.5/BM/Multiply>>>>";
        string picture = "q 60 0 0 40 220 100 cm BI /W 3 /H 2 /CS /CMYK /BPC 8 /F /AHx ID FF00000000FF00000000FF00000000FF80800000008080FF> EI Q\n";
        string content = "1 0 0 0 k 20 20 100 60 re f\n1 0 0 rg 150 20 50 50 re f\n/White cs 0.5 scn 60 60 100 60 re f\n"
            + "/Cut CS 1 SCN 0.5 w 30 30 200 120 re S\n/Odd cs 1 scn 10 100 20 20 re f\n" + picture
            + (which == "device-n" ? "/Both cs 0.6 0.8 scn 100 140 90 40 re f\n" : "")
            + (which == "overprint" ? "/Over gs 0 1 0 0 k 40 30 60 60 re f /Cut cs 0.4 scn 70 40 60 60 re f 0 0 0 1 K 3 w 10 10 m 280 190 l S\n" : "")
            + (which == "see-through" ? "/Clear gs 0 1 0 0.2 k 40 30 150 90 re f 0 0.4 1 rg 70 40 60 60 re f\n" : "")
            + "0 0 0 0.7 k 240 160 m 260 190 280 190 290 160 c f\n";
        return HandPdf.Page(entries, spaces, content, "", HandPdf.Stream("{pop 0 0 0}", "/FunctionType 4/Domain[0 1 0 1]/Range[0 1 0 1 0 1 0 1]"));
    }

    private async Task<string> DirectAsync(string pdf)
    {
        string folder = Directory.CreateDirectory(work.File("direct")).FullName;
        await WorkFolder.RunAsync(
            "gs", "", "-dSAFER", "-dBATCH", "-dNOPAUSE", "-q", "-sDEVICE=tiffsep", "-dMaxSpots=40", "-r144", "-sOutputICCProfile=" + WorkFolder.CmykProfile,
            "-sDefaultCMYKProfile=" + WorkFolder.CmykProfile, "-dRenderIntent=1", "-dBlackPtComp=1", "-o", Path.Combine(folder, "plate.tif"), pdf);
        return folder;
    }

    private static byte[] Grey(string path, int width, int height)
    {
        using var tiff = Tiff.Open(path, "r");
        Assert.Equal(width, tiff.GetField(TiffTag.IMAGEWIDTH)[0].ToInt());
        Assert.Equal(height, tiff.GetField(TiffTag.IMAGELENGTH)[0].ToInt());
        byte[] all = new byte[width * height];
        byte[] row = new byte[tiff.ScanlineSize()];
        for (int y = 0; y < height; y++)
        {
            Assert.True(tiff.ReadScanline(row, y));
            row.AsSpan(0, width).CopyTo(all.AsSpan(y * width));
        }

        return all;
    }
}
