using System.Globalization;
using System.Text.RegularExpressions;
using Laydown.Artwork.Pages;
using Laydown.Measures;
using NetVips;
using Xunit;

namespace Laydown.Edges.Tests.Artwork;

/// <summary>Measures of PDF pages against pdfinfo, pdffonts, pdfimages and mutool.</summary>
public sealed partial class PdfMeasureReferenceTests : IDisposable
{
    private readonly WorkFolder work = new();

    [Theory]
    [InlineData("/MediaBox[0 0 595 842]", 1)]
    [InlineData("/MediaBox[-20 30 575 872]/TrimBox[0 50 555 852]/BleedBox[-10 40 565 862]", 1)]
    [InlineData("/MediaBox[0 0 600 400]/TrimBox[580 380 20 20]/UserUnit 10", 10)]
    [InlineData("/MediaBox[0 0 600 400]/CropBox[10 10 590 390]/TrimBox[20.5 30.25 580 380]", 1)]
    public async Task Boxes_equal_those_of_pdfinfo(string entries, double unit)
    {
        string pdf = work.Write("boxes.pdf", HandPdf.Page(entries, "", "0 0 0 1 k 10 10 50 50 re f"));
        string told = await WorkFolder.RunAsync("pdfinfo", "", "-box", pdf);
        var page = (await work.Reader.ReadAsync(pdf, CancellationToken.None)).Value.Pages[0];

        double[] media = Box(told, "MediaBox"), trim = Box(told, "TrimBox");
        double mm = unit * 25.4 / 72;
        Assert.Equal(unit, page.UserUnit);
        Assert.Equal((media[2] - media[0]) * mm, page.MediaMm.WidthMm, 0.005 * mm);
        Assert.Equal((media[3] - media[1]) * mm, page.MediaMm.HeightMm, 0.005 * mm);
        Assert.Equal(entries.Contains("TrimBox", StringComparison.Ordinal), page.HasTrimBox);
        if (page.HasTrimBox)
            Near(trim, media, mm, page.TrimMm);
        if (entries.Contains("BleedBox", StringComparison.Ordinal))
            Near(Box(told, "BleedBox"), media, mm, page.BleedMm);
        else
            Assert.Equal(page.TrimMm, page.BleedMm);
    }

    [Theory, InlineData(0), InlineData(90), InlineData(180), InlineData(270), InlineData(-90)]
    public async Task A_turned_page_has_the_size_mutool_draws(int turn)
    {
        string pdf = work.Write("turned.pdf", HandPdf.Page(Invariant($"/MediaBox[0 0 300 200]/TrimBox[10 20 280 190]/UserUnit 2/Rotate {turn}"), "", "0 g 0 0 30 20 re f"));
        await WorkFolder.RunAsync("mutool", "", "draw", "-q", "-r", "72", "-o", work.File("drawn.png"), pdf);
        var page = (await work.Reader.ReadAsync(pdf, CancellationToken.None)).Value.Pages[0];

        using var drawn = Image.NewFromFile(work.File("drawn.png"));
        Assert.Equal(drawn.Width * 25.4 / 72, page.MediaMm.WidthMm, 0.2);
        Assert.Equal(drawn.Height * 25.4 / 72, page.MediaMm.HeightMm, 0.2);

        // The trim box turns with the page: its nearest corner to the black corner stays 10 by 20 units away.
        bool blackRight = drawn[drawn.Width - 3, drawn.Height / 2].Length > 0 && Dark(drawn, drawn.Width - 3, 3) | Dark(drawn, drawn.Width - 3, drawn.Height - 3);
        bool blackTop = Dark(drawn, 3, 3) | Dark(drawn, drawn.Width - 3, 3);
        double x = blackRight ? page.MediaMm.WidthMm - page.TrimMm.RightMm : page.TrimMm.XMm;
        double y = blackTop ? page.MediaMm.HeightMm - page.TrimMm.TopMm : page.TrimMm.YMm;
        double[] margins = turn % 180 == 0 ? [x, y] : [y, x];
        Assert.Equal(20 * 25.4 / 72, margins[0], 1e-6);
        Assert.Equal(40 * 25.4 / 72, margins[1], 1e-6);
    }

    [Fact]
    public async Task Pictures_have_the_pixels_and_ppi_of_pdfimages()
    {
        string form = HandPdf.Stream("q 0 50 -80 0 90 10 cm /I Do Q", "/Type/XObject/Subtype/Form/BBox[0 0 100 100]/Matrix[2 0 0 2 0 0]/Resources<</XObject<</I 5 0 R>>>>");
        string picture = HandPdf.Stream(new string('\u0080', 40 * 30 * 3), "/Type/XObject/Subtype/Image/Width 40/Height 30/ColorSpace/DeviceRGB/BitsPerComponent 8");
        string pdf = work.Write("pictures.pdf", HandPdf.Page("/MediaBox[0 0 300 300]", "/XObject<</I 5 0 R/F 6 0 R>>", "q 100 0 0 60 10 200 cm /I Do Q /F Do", "", picture, form));

        string told = await WorkFolder.RunAsync("pdfimages", "", "-list", pdf);
        var page = (await work.Reader.ReadAsync(pdf, CancellationToken.None)).Value.Pages[0];

        var rows = told.Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2).Select(r => r.Split(' ', StringSplitOptions.RemoveEmptyEntries)).ToList();
        Assert.Equal(2, rows.Count);
        Assert.Equal(rows.Select(r => (r[3], r[4])), page.Images.Select(i => (Invariant($"{i.PixelWidth}"), Invariant($"{i.PixelHeight}"))));

        // pdfimages rounds to whole ppi.
        Assert.All(rows.Zip(page.Images), pair => Assert.Equal(
            Math.Min(Number(pair.First[12]), Number(pair.First[13])), pair.Second.EffectivePpi, 0.5 + 1e-9));
    }

    [Fact]
    public async Task Fonts_are_those_of_pdffonts()
    {
        byte[] lato = File.ReadAllBytes(Path.Combine(Repository(), "assets/fonts/Lato-Regular.ttf"));
        string shapes = HandPdf.Stream(System.Text.Encoding.Latin1.GetString(lato), Invariant($"/Length1 {lato.Length}"));
        string within = HandPdf.Stream("BT /B 9 Tf 10 10 Td (Tern) Tj ET", "/Type/XObject/Subtype/Form/BBox[0 0 100 100]/Resources<</Font<</B 7 0 R>>>>");
        string descriptor = "/FontDescriptor<</Type/FontDescriptor/FontName/{0}/Flags 32/FontBBox[0 -200 1000 900]/ItalicAngle 0/Ascent 900/Descent -200/CapHeight 700/StemV 80{1}>>";
        string font = "<</Type/Font/Subtype/TrueType/BaseFont/{0}/FirstChar 32/LastChar 126/Widths[" + string.Concat(Enumerable.Repeat("500 ", 95)) + "]/Encoding/WinAnsiEncoding{1}>>";
        string pdf = work.Write("fonts.pdf", HandPdf.Page(
            "/MediaBox[0 0 300 300]", "/Font<</A 5 0 R/C 8 0 R>>/XObject<</F 9 0 R>>", "BT /A 12 Tf 10 100 Td (Oystercatcher) Tj /C 30 Tf 0 60 Td (Sand) Tj ET /F Do", "",
            string.Format(CultureInfo.InvariantCulture, font, "ABCDEF+Lato-Regular", string.Format(CultureInfo.InvariantCulture, descriptor, "ABCDEF+Lato-Regular", "/FontFile2 6 0 R")), shapes,
            string.Format(CultureInfo.InvariantCulture, font, "Missing-Face", string.Format(CultureInfo.InvariantCulture, descriptor, "Missing-Face", "")),
            "<</Type/Font/Subtype/Type1/BaseFont/Helvetica>>", within));

        string told = await WorkFolder.RunAsync("pdffonts", "", pdf);
        var page = (await work.Reader.ReadAsync(pdf, CancellationToken.None)).Value.Pages[0];

        var expected = told.Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2)
            .Select(r => (Name: r.Split(' ')[0], Embedded: FontRow().Match(r).Groups[1].Value == "yes")).OrderBy(f => f.Name, StringComparer.Ordinal);
        Assert.Equal(expected, page.Fonts.Select(f => (f.Name, f.Embedded)).OrderBy(f => f.Name, StringComparer.Ordinal));
        Assert.Equal([9, 12, 30], page.SmallestTexts.Select(t => t.SizePt), new Close(0.01));
        Assert.Equal(["Tern", "Oystercatcher", "Sand"], page.SmallestTexts.Select(t => t.Sample));
    }

    public void Dispose() => work.Dispose();

    [GeneratedRegex("(yes|no) +(yes|no) +(yes|no) +[0-9]+ +[0-9]+$")]
    private static partial Regex FontRow();

    private static string Repository()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "Laydown.slnx")))
            folder = Path.GetDirectoryName(folder);
        return folder ?? throw new InvalidOperationException("The repository was not found above the tests.");
    }

    private static bool Dark(Image image, int x, int y) => image[x, y][0] < 100;

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static double[] Box(string told, string name) =>
        [.. told.Split('\n').First(l => l.StartsWith(name, StringComparison.Ordinal))[(name.Length + 1)..].Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Number)];

    private static void Near(double[] box, double[] media, double mm, RectMm found)
    {
        // pdfinfo prints two decimals of a point.
        double slack = 0.011 * mm;
        Assert.Equal((box[0] - media[0]) * mm, found.XMm, slack);
        Assert.Equal((box[1] - media[1]) * mm, found.YMm, slack);
        Assert.Equal((box[2] - media[0]) * mm, found.RightMm, slack);
        Assert.Equal((box[3] - media[1]) * mm, found.TopMm, slack);
    }

    private sealed class Close(double slack) : IEqualityComparer<double>
    {
        public bool Equals(double one, double other) => Math.Abs(one - other) <= slack;

        public int GetHashCode(double value) => 0;
    }
}
