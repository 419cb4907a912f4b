using System.Text;
using Laydown.Artwork.Pages;
using Laydown.Measures;
using Xunit;

namespace Laydown.Edges.Tests.Artwork;

/// <summary>Measures of SVG drawings whose whole truth stands in the test.</summary>
public sealed class SvgLawTests : IDisposable
{
    private readonly WorkFolder work = new();

    [Theory]
    [InlineData("width=\"420mm\" height=\"297mm\" viewBox=\"0 0 840 594\"", 420, 297)]
    [InlineData("width=\"4in\" height=\"30cm\"", 101.6, 300)]
    [InlineData("width=\"96\" height=\"192px\"", 25.4, 50.8)]
    [InlineData("width=\"72pt\" height=\"6pc\"", 25.4, 25.4)]
    [InlineData("viewBox=\"10 10 960 480\"", 254, 127)]
    [InlineData("width=\"100%\" height=\"100%\" viewBox=\"0 0 96 96\"", 25.4, 25.4)]
    [InlineData("width=\"300mm\" viewBox=\"0 0 30 20\"", 300, 200)]
    public async Task Size_follows_units_and_view_box(string head, double widthMm, double heightMm)
    {
        var page = await ReadAsync(head, "<rect width='5' height='5'/>");
        Assert.Equal(widthMm, page.MediaMm.WidthMm, 1e-6);
        Assert.Equal(heightMm, page.MediaMm.HeightMm, 1e-6);
    }

    [Fact]
    public async Task Strokes_and_texts_follow_styles_and_transforms()
    {
        var page = await ReadAsync("width=\"200mm\" height=\"100mm\" viewBox=\"0 0 400 200\"",
            "<style>.thin{stroke:#000;stroke-width:0.4;fill:none} text{font-family:Lato;font-size:20px}</style>"
            + "<path class='thin' d='M10 20 H110'/><g transform='scale(2)'><path d='M10 50 H60' stroke='red' stroke-width='3' fill='none'/></g>"
            + "<path d='M10 190 H60' transform='scale(3 1)' stroke='red' stroke-width='4mm' fill='none' vector-effect='non-scaling-stroke'/>"
            + "<text x='20' y='150'>Low tide</text><g transform='translate(200 100) scale(0.5)'><text x='0' y='0' font-family='B612 Mono'>14:07</text></g>"
            + "<text x='200' y='180' style='font-family:Unheard Of;font-size:40px'>Odd</text>");

        Assert.Equal(3, page.ThinnestLines.Count);
        Assert.Equal(4, page.ThinnestLines[2].WidthMm, 1e-3);
        Assert.Equal(0.2, page.ThinnestLines[0].WidthMm, 1e-4);
        Assert.Equal(3, page.ThinnestLines[1].WidthMm, 1e-4);
        Assert.Equal(new RectMm(5, 90, 50, 0).XMm, page.ThinnestLines[0].Place.XMm, 0.01);
        Assert.Equal(90, page.ThinnestLines[0].Place.YMm, 0.01);

        // Two user units are a millimetre: 20 units are 10 mm, 28.35 pt.
        Assert.Equal(["14:07", "Low tide", "Odd"], page.SmallestTexts.Select(t => t.Sample));
        Assert.Equal(5 / 25.4 * 72, page.SmallestTexts[0].SizePt, 0.05);
        Assert.Equal(10 / 25.4 * 72, page.SmallestTexts[1].SizePt, 0.05);
        Assert.Equal(10, page.SmallestTexts[1].Place.XMm, 0.2);
        Assert.Contains(page.Fonts, f => f is { Name: "Lato", Embedded: true });
        Assert.Contains(page.Fonts, f => f is { Name: "Unheard Of", Embedded: false });
    }

    [Fact]
    public async Task Text_is_drawn_with_the_shops_fonts()
    {
        string path = Write("width=\"100mm\" height=\"30mm\" viewBox=\"0 0 100 30\"", "<text x='5' y='22' font-family='Lato' font-weight='bold' font-size='20' fill='#000'>Dunlin</text>");
        using var page = (await work.Renderer.RenderAsync(new Laydown.Shop.Artwork.RenderRequest(path, 1, new SizeMm(100, 30), 0, 100, WorkFolder.CmykProfile), CancellationToken.None)).Value;
        double painted = WorkFolder.Plate(page, "Alpha").Count(a => a > 128) / (double)(page.Width * page.Height);
        Assert.InRange(painted, 0.08, 0.35);
    }

    [Fact]
    public async Task Embedded_pictures_have_their_effective_ppi()
    {
        using var picture = (NetVips.Image.Black(30, 20, bands: 3) + 90).Cast(NetVips.Enums.BandFormat.Uchar);
        string data = Convert.ToBase64String(picture.WriteToBuffer(".png"));
        var page = await ReadAsync("width=\"100mm\" height=\"100mm\" viewBox=\"0 0 100 100\"", $"<image x='10' y='20' width='60' height='40' href='data:image/png;base64,{data}'/>");
        var image = Assert.Single(page.Images);
        Assert.Equal((30, 20), (image.PixelWidth, image.PixelHeight));
        Assert.Equal(30 * 25.4 / 60, image.EffectivePpi, 0.05);
        Assert.Equal(40, image.Place.YMm, 0.1);
    }

    public void Dispose() => work.Dispose();

    private string Write(string head, string body) =>
        work.Write("drawing.svg", Encoding.UTF8.GetBytes(Invariant($"<?xml version=\"1.0\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" {head}>{body}</svg>")));

    private async Task<ArtworkPage> ReadAsync(string head, string body)
    {
        var read = await work.Reader.ReadAsync(Write(head, body), CancellationToken.None);
        Assert.True(read.IsTaken, string.Join("\n", read.Faults));
        Assert.Equal(ArtworkKind.Svg, read.Value.Kind);
        return Assert.Single(read.Value.Pages);
    }
}
