using SkiaSharp;

namespace Laydown.Demo.Art;

/// <summary>A picture as a list of what is drawn, first below. Mm from its upper left corner, y downward; bleed lies outside 0 to size.</summary>
internal sealed class Picture(double widthMm, double heightMm, double bleedMm)
{
    /// <summary>Resolution of soft light in files: one arc minute seen from a metre.</summary>
    public const double SoftPpi = 90;

    private readonly List<Element> elements = [];

    public double WidthMm { get; } = widthMm;

    public double HeightMm { get; } = heightMm;

    public double BleedMm { get; } = bleedMm;

    public IReadOnlyList<Element> Elements => elements;

    /// <summary>The finished piece with bleed.</summary>
    public Outline Whole => Outline.Rect(-BleedMm, -BleedMm, WidthMm + (2 * BleedMm), HeightMm + (2 * BleedMm));

    public void Fill(Outline outline, Paint paint, double opacity = 1) => elements.Add(new Element.Shape(outline, paint, opacity));

    public void Soften(double x, double y, double width, double height, double ppi, Action<SKCanvas> draw) =>
        elements.Add(new Element.Soft(x, y, width, height, ppi, draw));

    /// <summary>A line of text that starts at <paramref name="x"/>.</summary>
    public void Write(string words, Face face, double sizeMm, double x, double y, SKColor colour, double tracking = 0) =>
        elements.Add(new Element.Text(words, face, sizeMm, x, y, colour, tracking));

    /// <summary>A line of text around <paramref name="x"/>.</summary>
    public void WriteCentred(string words, Face face, double sizeMm, double x, double y, SKColor colour, double tracking = 0) =>
        Write(words, face, sizeMm, x - ((Type.Width(words, face, sizeMm, tracking)) / 2), y, colour, tracking);

    /// <summary>A line of text that ends at <paramref name="x"/>.</summary>
    public void WriteToward(string words, Face face, double sizeMm, double x, double y, SKColor colour, double tracking = 0) =>
        Write(words, face, sizeMm, x - Type.Width(words, face, sizeMm, tracking), y, colour, tracking);
}
