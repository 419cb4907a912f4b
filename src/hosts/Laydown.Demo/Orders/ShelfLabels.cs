using Laydown.Demo.Art;
using Laydown.Demo.Files;
using Laydown.Formats.PdfWriting;
using Laydown.Measures;
using SkiaSharp;

namespace Laydown.Demo.Orders;

/// <summary>Labels for the observatory's shop with EAN-13: two good ones, one with many small flaws, one cut short.</summary>
internal static class ShelfLabels
{
    private const double Width = 90;
    private const double Height = 40;

    /// <summary>Ten dots at 720 to the inch, so that every bar is a whole number of dots.</summary>
    private const double ModuleMm = 10 * 25.4 / 720;

    // Numbers that begin with 20 are for use within one shop.
    internal static string Tea { get; } = Codes.WithCheckDigit("200710470011");

    internal static string Salt { get; } = Codes.WithCheckDigit("200710470028");

    internal static string Pebbles { get; } = Codes.WithCheckDigit("200710470035");

    public static void Write(string folder)
    {
        SvgFiles.Write(Path.Combine(folder, "label-tea.svg"), Label("Marsh mint tea", "24 bags, cut and dried on the dyke", "4.80", Tea, Palette.Marsh, 0), "Marsh mint tea");
        PdfFiles.Write(Path.Combine(folder, "label-salt.pdf"), "Samphire salt", true, file =>
            file.AddPage(PdfPageSize.WithBleed(Width, Height, 2), canvas =>
                new PicturePdf(file).Draw(canvas, Label("Samphire salt", "120 g, from the east pans", "6.20", Salt, Palette.Samphire, 2), 2, 2)));
        Flawed(Path.Combine(folder, "label-pebbles.pdf"));
        CutShort(Path.Combine(folder, "label-salt.pdf"), Path.Combine(folder, "label-honey.pdf"));
    }

    private static Picture Label(string name, string about, string price, string digits, SKColor colour, double bleed)
    {
        Picture label = new(Width, Height, bleed);
        label.Fill(label.Whole, SKColors.White);
        label.Fill(Outline.Rect(-bleed, -bleed, 3.2 + bleed, Height + (2 * bleed)), colour);
        label.Write(name, Face.Black, 6.6, 7, 10.4, Palette.Deep);
        label.Write(about, Face.Regular, 2.5, 7.1, 14.6, Palette.Deep);
        label.Write(price, Face.Black, 12.4, 6.8, 35.4, colour, -0.1);
        Mark.Draw(label, 39.6, 31.2, 4.2, Palette.Deep);
        double x = Math.Round(52.2 / (ModuleMm / 10)) * ModuleMm / 10;
        Codes.Ean13(label, digits, x, 9.5, ModuleMm, 20);
        return label;
    }

    /// <summary>A hairline, very small text, a font that is not in the file, a code too small and with its quiet zone overrun.</summary>
    private static void Flawed(string path) => PdfFiles.Write(path, "Lucky pebbles", false, file =>
    {
        Picture label = new(Width, Height, 2);
        label.Fill(label.Whole, new SKColor(0xFF, 0xFD, 0xF6));
        label.Fill(Outline.Rect(-2, -2, 5.2, 44), Palette.Estuary);
        label.Write("Collected by hand above the spring tide line; please put one back.", Face.Regular, 0.8, 7.1, 17.8, Palette.Deep);
        label.Write("3.50", Face.Black, 12.4, 6.8, 35.4, Palette.Estuary, -0.1);
        Codes.Ean13(label, Pebbles, 56, 12, 0.25, 14);
        label.Fill(Outline.Rect(80.8, 11, 7.2, 18), Palette.Estuary);
        PdfFont missing = file.AddNamedFont("Helvetica-Bold");
        file.AddPage(PdfPageSize.WithBleed(Width, Height, 2), canvas =>
        {
            new PicturePdf(file).Draw(canvas, label, 2, 2);
            canvas.FillCmyk(0.9, 0.4, 0.4, 0.5);
            canvas.NamedText(missing, 6, new PointMm(9, 32), "Lucky pebbles");
            canvas.Apart(() =>
            {
                canvas.LineWidth(0.04);
                canvas.StrokeCmyk(0, 0, 0, 1);
                canvas.MoveTo(9, 28);
                canvas.LineTo(52, 28);
                canvas.Stroke();
            });
        });
    });

    /// <summary>As it arrives when a transfer breaks off.</summary>
    private static void CutShort(string whole, string path)
    {
        byte[] bytes = File.ReadAllBytes(whole);
        DemoFiles.Write(path, stream => stream.Write(bytes.AsSpan(0, bytes.Length * 2 / 5)));
    }
}
