using System.Globalization;
using Laydown.Artwork.Pages;
using NetVips;
using Xunit;

namespace Laydown.Edges.Tests.Artwork;

/// <summary>Measures of image files against ImageMagick's <c>identify</c> and libtiff's <c>tiffinfo</c>.</summary>
public sealed class ImageMeasureReferenceTests : IDisposable
{
    private readonly WorkFolder work = new();

    [Theory]
    [InlineData("a.png", "RGB", 200)]
    [InlineData("b.jpg", "RGB", 150)]
    [InlineData("c.jpg", "CMYK", 300)]
    [InlineData("d.tif", "CMYK", 96)]
    [InlineData("e.tif", "RGB16", 254)]
    [InlineData("f.png", "RGBA", 120)]
    [InlineData("g.tif", "CMYKA", 72)]
    [InlineData("h.png", "GREY", 100)]
    public async Task Size_resolution_colour_and_alpha_are_those_identify_tells(string name, string colour, double ppi)
    {
        string path = Picture(name, colour, 123, 77, ppi);
        string[] told = (await WorkFolder.RunAsync("identify", "", "-format", "%w %h %x %[colorspace] %[channels]", "-units", "PixelsPerInch", path)).Split(' ');
        var file = (await work.Reader.ReadAsync(path, CancellationToken.None)).Value;
        var page = Assert.Single(file.Pages);

        Assert.Equal((told[0], told[1]), (Invariant($"{page.PixelWidth}"), Invariant($"{page.PixelHeight}")));
        double declared = double.Parse(told[2], CultureInfo.InvariantCulture);
        Assert.Equal(declared, page.Images[0].DeclaredPpi!.Value, 0.02);
        Assert.Equal(page.PixelWidth * 25.4 / declared, page.MediaMm.WidthMm, 0.01);
        Assert.Equal(page.PixelHeight * 25.4 / declared, page.MediaMm.HeightMm, 0.01);
        Assert.Equal(told[3] switch { "CMYK" => "DeviceCMYK", "Gray" => "DeviceGray", _ => "DeviceRGB" }, Assert.Single(page.ColourSpaces));
        Assert.Equal(colour.EndsWith('A'), page.HasAlpha);
        Assert.Equal(colour == "RGB16" ? 16 : 8, page.Images[0].BitsPerComponent);
        Assert.Equal(page.TrimMm.Size, page.MediaMm);
    }

    [Fact]
    public async Task A_big_tiff_of_three_pages_has_the_pages_tiffinfo_tells()
    {
        using var first = Noise(60, 40);
        using var three = first.Join(first.Invert(), Enums.Direction.Vertical).Join(first.Flip(Enums.Direction.Horizontal), Enums.Direction.Vertical);
        three.Mutate(m => m.Set(GValue.GIntType, "page-height", 40)).Tiffsave(work.File("three.tif"), bigtiff: true, xres: 10, yres: 10);
        string told = await WorkFolder.RunAsync("tiffinfo", "", work.File("three.tif"));
        var file = (await work.Reader.ReadAsync(work.File("three.tif"), CancellationToken.None)).Value;

        Assert.Equal(told.Split('\n').Count(l => l.Contains("TIFF Directory", StringComparison.Ordinal)), file.Pages.Count);
        Assert.Equal([1, 2, 3], file.Pages.Select(p => p.Number));

        // 10 pixels a millimetre, in whichever unit it is written.
        Assert.Matches("Resolution: (100, 100 pixels/cm|254, 254 pixels/inch)", told);
        Assert.All(file.Pages, p => Assert.Equal((60, 40, 6.0), (p.PixelWidth, p.PixelHeight, Math.Round(p.MediaMm.WidthMm, 2))));
    }

    [Theory, InlineData("none.png"), InlineData("none.jpg"), InlineData("none.tif")]
    public async Task A_file_without_resolution_is_taken_at_72_ppi_and_says_so(string name)
    {
        await WorkFolder.RunAsync("convert", "", "-size", "72x36", "xc:teal", "-units", "Undefined", "-strip", "-define", "png:exclude-chunks=pHYs", work.File(name));
        var page = (await work.Reader.ReadAsync(work.File(name), CancellationToken.None)).Value.Pages[0];
        Assert.Equal(25.4, page.MediaMm.WidthMm, 0.01);
        if (!name.EndsWith("png", StringComparison.Ordinal))
            Assert.Null(page.Images[0].DeclaredPpi);
    }

    [Fact]
    public async Task Total_ink_of_a_cmyk_image_is_the_sum_of_its_heaviest_pixel()
    {
        using var light = (Image.Black(100, 50, bands: 4) + new[] { 20, 20, 20, 20 }).Cast(Enums.BandFormat.Uchar);
        using var ink = light.Mutate(m => m.DrawRect([255, 204, 153, 230], 70, 10, 3, 3, true)).Copy(interpretation: Enums.Interpretation.Cmyk, xres: 1, yres: 1);
        ink.Tiffsave(work.File("ink.tif"));
        var page = (await work.Reader.ReadAsync(work.File("ink.tif"), CancellationToken.None)).Value.Pages[0];
        Assert.Equal((255 + 204 + 153 + 230) / 2.55, page.TotalInkPercent!.Value, 0.01);
        Assert.Equal((70, 39, 1, 1), (page.TotalInkPlace!.Value.XMm, page.TotalInkPlace.Value.YMm, page.TotalInkPlace.Value.WidthMm, page.TotalInkPlace.Value.HeightMm));
    }

    [Fact]
    public async Task A_profile_is_named_by_its_description()
    {
        using var noise = Noise(30, 20);
        noise.Mutate(m => m.Set(GValue.BlobType, "icc-profile-data", File.ReadAllBytes(WorkFolder.RgbProfile))).WriteToFile(work.File("own.png"));
        string told = await WorkFolder.RunAsync("identify", "", "-format", "%[profile:icc]", work.File("own.png"));
        var page = (await work.Reader.ReadAsync(work.File("own.png"), CancellationToken.None)).Value.Pages[0];
        Assert.Equal(told.Trim(), page.Profile);
        Assert.Equal("ICCBased(3)", page.ColourSpaces[0]);
    }

    public void Dispose() => work.Dispose();

    private static Image Noise(int width, int height)
    {
        var grey = Image.Gaussnoise(width, height, sigma: 40, mean: 128, seed: 3).Cast(Enums.BandFormat.Uchar);
        return grey.Bandjoin(grey.Invert(), grey.Flip(Enums.Direction.Vertical)).Copy(interpretation: Enums.Interpretation.Srgb, xres: 10, yres: 10);
    }

    private string Picture(string name, string colour, int width, int height, double ppi)
    {
        using var rgb = Noise(width, height);
        using var grey = rgb[0];
        using var picture = colour switch
        {
            "CMYK" => rgb.Bandjoin(grey).Copy(interpretation: Enums.Interpretation.Cmyk),
            "CMYKA" => rgb.Bandjoin(grey, grey.Invert()).Copy(interpretation: Enums.Interpretation.Cmyk),
            "RGBA" => rgb.Bandjoin(grey.Invert()),
            "RGB16" => (rgb * 257).Cast(Enums.BandFormat.Ushort).Copy(interpretation: Enums.Interpretation.Rgb16),
            "GREY" => grey.Copy(interpretation: Enums.Interpretation.Bw),
            _ => rgb.Copy(),
        };
        using var sized = picture.Copy(xres: ppi / 25.4, yres: ppi / 25.4);
        sized.WriteToFile(work.File(name));
        return work.File(name);
    }
}
