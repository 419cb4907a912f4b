using System.Globalization;
using SkiaSharp;
using Svg.Skia;
using Xunit;
using ZXing;
using ZXing.Common;

namespace Laydown.Edges.Tests.Demo;

/// <summary>Files of the demo as programs of others read them: qpdf, poppler, Ghostscript, libtiff, ZXing.</summary>
public sealed class DemoFilesReferenceTests(DemoShop shop) : IClassFixture<DemoShop>
{
    [Theory]
    [InlineData("trail-sluice.pdf")]
    [InlineData("trail-hide.pdf")]
    [InlineData("trail-pools.pdf")]
    [InlineData("night-panel.pdf")]
    [InlineData("wall-estuary-1to10.pdf")]
    [InlineData("hanging-tern.pdf")]
    [InlineData("hanging-avocet.pdf")]
    [InlineData("label-salt.pdf")]
    [InlineData("label-pebbles.pdf")]
    public void Qpdf_finds_no_error(string name)
    {
        (int code, string said) = DemoShop.Run("qpdf", "--check", shop.File(name));
        Assert.True(code == 0, said);
        Assert.Contains("No syntax or stream encoding errors found", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Qpdf_cannot_read_the_file_that_was_cut_short() => Assert.NotEqual(0, DemoShop.Run("qpdf", "--check", shop.File("label-honey.pdf")).Code);

    [Theory]
    [InlineData("trail-sluice.pdf", 3)]
    [InlineData("night-panel.pdf", 1)]
    [InlineData("wall-estuary-1to10.pdf", 2)]
    [InlineData("label-salt.pdf", 2)]
    public void Poppler_finds_every_font_embedded_as_a_subset_with_its_text(string name, int fonts)
    {
        string[] lines = DemoShop.Run("pdffonts", shop.File(name)).Said.Split('\n', StringSplitOptions.RemoveEmptyEntries)[2..];
        Assert.Equal(fonts, lines.Length);
        Assert.All(lines, l => Assert.Matches(@"Identity-H\s+yes\s+yes\s+yes", l));
    }

    [Fact]
    public void One_font_of_the_flawed_label_is_not_embedded() =>
        Assert.Matches(@"Helvetica-Bold\s+Type 1\s+WinAnsi\s+no", DemoShop.Run("pdffonts", shop.File("label-pebbles.pdf")).Said);

    [Fact]
    public void Poppler_reads_the_words_of_a_sign()
    {
        string said = DemoShop.Run("pdftotext", "-layout", shop.File("trail-sluice.pdf"), "-").Said;
        Assert.Contains("The old sluice", said, StringComparison.Ordinal);
        Assert.Contains("Salt water meets fresh at this gate, twice a day.", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("trail-sluice.pdf", 590, 410, 5)]
    [InlineData("night-panel.pdf", 908, 608, 4)]
    [InlineData("wall-estuary-1to10.pdf", 646, 246, 3)]
    [InlineData("label-salt.pdf", 94, 44, 2)]
    public void Poppler_reads_boxes_with_bleed(string name, double widthMm, double heightMm, double bleedMm)
    {
        string said = DemoShop.Run("pdfinfo", "-box", shop.File(name)).Said;
        Assert.Equal([0, 0, widthMm, heightMm], Box(said, "MediaBox"), Close);
        Assert.Equal([0, 0, widthMm, heightMm], Box(said, "BleedBox"), Close);
        Assert.Equal([bleedMm, bleedMm, widthMm - bleedMm, heightMm - bleedMm], Box(said, "TrimBox"), Close);
    }

    [Fact]
    public void Ghostscript_makes_a_plate_of_white_with_windows_under_the_birds()
    {
        Dictionary<string, string> plates = shop.Plates(shop.File("night-panel.pdf"), 1, 25);
        Assert.Equal(["Black", "Cyan", "Magenta", "White", "Yellow"], plates.Keys.Order(StringComparer.Ordinal));

        // 0 is full ink in these files. Sky: full white; the near avocet's body at (572, 420) mm of the trim: 170 of 255.
        using SKBitmap white = Tiff(plates["White"]);
        Assert.Equal(0, Grey(white, 25, 100, 300));
        Assert.Equal(255 - 170, Grey(white, 25, 572 + 4, 420 + 4), tolerance: 2.0);
    }

    [Theory]
    [InlineData("hanging-tern.pdf", 230, 216)]
    [InlineData("hanging-avocet.pdf", 132, 146)]
    public void Ghostscript_keeps_white_under_the_colour_and_the_cut_apart(string name, double xMm, double yMm)
    {
        Dictionary<string, string> plates = shop.Plates(shop.File(name), 1, 50);
        Assert.Equal(["Black", "Cut", "Cyan", "Magenta", "White", "Yellow"], plates.Keys.Order(StringComparer.Ordinal));
        using SKBitmap white = Tiff(plates["White"]);
        Assert.Equal(0, Grey(white, 50, xMm, yMm));
        Assert.Equal(255, Grey(white, 50, 3, 3));
        using SKBitmap cut = Tiff(plates["Cut"]);
        Assert.Equal(255, Grey(cut, 50, xMm, yMm));
        Assert.Contains(Enumerable.Range(0, cut.Width), x => cut.GetPixel(x, cut.Height / 2).Red < 128);
    }

    [Fact]
    public void White_lies_on_a_layer_with_its_processing_step_and_the_cut_on_another()
    {
        string said = DemoShop.Run("qpdf", "--qdf", "--object-streams=disable", shop.File("hanging-tern.pdf"), "-").Said;
        Assert.Matches(@"/GTS_Metadata <<\s+/GTS_ProcStepsGroup /White\s+>>", said);
        Assert.Matches(@"/GTS_Metadata <<\s+/GTS_ProcStepsGroup /Structural\s+/GTS_ProcStepsType /Cutting\s+>>", said);
    }

    [Theory]
    [InlineData("trail-sluice.pdf", "https://saltmarsh-observatory.example/trail/1")]
    [InlineData("trail-hide.pdf", "https://saltmarsh-observatory.example/trail/2")]
    [InlineData("trail-pools.pdf", "https://saltmarsh-observatory.example/trail/3")]
    public void Zxing_reads_the_code_of_a_sign(string name, string link)
    {
        using SKBitmap page = SKBitmap.Decode(shop.Render(shop.File(name), 1, 60));
        Assert.Equal(link, Read(page, BarcodeFormat.QR_CODE));
    }

    [Theory]
    [InlineData("label-salt.pdf", "2007104700285")]
    [InlineData("label-pebbles.pdf", "2007104700353")]
    public void Zxing_reads_the_code_of_a_label(string name, string digits)
    {
        using SKBitmap page = SKBitmap.Decode(shop.Render(shop.File(name), 1, 600));
        Assert.Equal(digits, Read(page, BarcodeFormat.EAN_13));
    }

    [Fact]
    public void Zxing_reads_the_code_of_the_label_in_svg()
    {
        using SKSvg svg = new();
        using SKPicture picture = svg.Load(shop.File("label-tea.svg"))!;
        using SKBitmap page = new(1800, 800);
        using SKCanvas canvas = new(page);
        canvas.Clear(SKColors.White);
        canvas.Scale(1800 / picture.CullRect.Width);
        canvas.DrawPicture(picture);
        Assert.Equal("2007104700117", Read(page, BarcodeFormat.EAN_13));
    }

    [Fact]
    public void Libtiff_reads_profile_inks_and_resolution()
    {
        string tern = DemoShop.Run("tiffinfo", shop.File("card-tern.tif")).Said;
        Assert.Contains("ICC Profile: <present>", tern, StringComparison.Ordinal);
        Assert.Contains("Photometric Interpretation: RGB color", tern, StringComparison.Ordinal);
        string night = DemoShop.Run("tiffinfo", shop.File("tern-night-banner.tif")).Said;
        Assert.Contains("Photometric Interpretation: separated", night, StringComparison.Ordinal);
        Assert.Contains("Samples/Pixel: 4", night, StringComparison.Ordinal);
        Assert.Contains("Resolution: 32, 32 pixels/inch", night, StringComparison.Ordinal);
    }

    [Fact]
    public void Image_files_claim_what_they_should()
    {
        Assert.Contains("density 300x300", DemoShop.Run("file", shop.File("open-day.jpg")).Said, StringComparison.Ordinal);
        Assert.Contains("110", DemoShop.Run("identify", "-units", "PixelsPerInch", "-format", "%x", shop.File("card-avocet.png")).Said, StringComparison.Ordinal);
        Assert.Matches("^(Blend|True)$", DemoShop.Run("identify", "-format", "%A", shop.File("card-avocet.png")).Said.Trim());
    }

    private static double[] Box(string said, string name) =>
        [.. said.Split('\n').Single(l => l.StartsWith(name, StringComparison.Ordinal)).Split(':')[1].Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(n => double.Parse(n, CultureInfo.InvariantCulture) * 25.4 / 72)];

    // pdfinfo prints two decimals of a point.
    private static bool Close(double one, double other) => Math.Abs(one - other) < 0.005;

    private SKBitmap Tiff(string path)
    {
        string png = path + ".png";
        (int code, string said) = DemoShop.Run("convert", path, png);
        Assert.True(code == 0, said);
        return SKBitmap.Decode(png);
    }

    private static int Grey(SKBitmap bitmap, double ppi, double xMm, double yMm) => bitmap.GetPixel((int)(xMm * ppi / 25.4), (int)(yMm * ppi / 25.4)).Red;

    private static string? Read(SKBitmap page, BarcodeFormat format)
    {
        byte[] bytes = new byte[page.Width * page.Height * 3];
        for (int i = 0, y = 0; y < page.Height; y++)
        {
            for (int x = 0; x < page.Width; x++)
            {
                SKColor c = page.GetPixel(x, y);
                (bytes[i++], bytes[i++], bytes[i++]) = (c.Red, c.Green, c.Blue);
            }
        }

        BinaryBitmap pixels = new(new HybridBinarizer(new RGBLuminanceSource(bytes, page.Width, page.Height, RGBLuminanceSource.BitmapFormat.RGB24)));
        Dictionary<DecodeHintType, object> hints = new() { [DecodeHintType.TRY_HARDER] = true, [DecodeHintType.POSSIBLE_FORMATS] = new List<BarcodeFormat> { format } };
        return new MultiFormatReader().decode(pixels, hints)?.Text;
    }
}
