using System.Globalization;
using System.Text;
using Laydown.Measures;

namespace Laydown.Formats.PdfWriting;

/// <summary>Draws on one page. Places in mm from the media's lower left corner, y upward.</summary>
public sealed class PdfCanvas
{
    private readonly PdfFile file;
    private readonly StringBuilder code = new();
    private readonly SortedDictionary<string, string> spaces = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, string> states = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, string> pictures = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, string> fonts = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, string> shadings = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, string> layers = new(StringComparer.Ordinal);
    private int open;

    internal PdfCanvas(PdfFile file) => this.file = file;

    internal bool IsTransparent { get; private set; }

    /// <summary>Everything drawn by <paramref name="draw"/> belongs to the layer.</summary>
    public void On(PdfLayer layer, Action draw)
    {
        string name = Use(layers, "L", file.LayerId(layer));
        Put(Invariant($"/OC /{name} BDC"));
        draw();
        Put("EMC");
    }

    /// <summary>What <paramref name="draw"/> sets (colour, place, clip, overprint) ends with it.</summary>
    public void Apart(Action draw)
    {
        open++;
        Put("q");
        draw();
        Put("Q");
        open--;
    }

    /// <summary>Moves, turns and scales what follows: x' = a·x + c·y + e, y' = b·x + d·y + f.</summary>
    public void Transform(double a, double b, double c, double d, double e, double f) => Put(PdfText.Numbers(a, b, c, d, e, f) + " cm");

    /// <summary>Colour of fills in sRGB, each 0 to 1.</summary>
    public void FillRgb(double red, double green, double blue)
    {
        if (file.RgbSpace == "/DeviceRGB")
            Put(PdfText.Numbers(red, green, blue) + " rg");
        else
            Put(Invariant($"/{UseSpace(file.RgbSpace, "RGB")} cs ") + PdfText.Numbers(red, green, blue) + " sc");
    }

    /// <summary>Colour of fills in process inks, each 0 to 1.</summary>
    public void FillCmyk(double cyan, double magenta, double yellow, double black) => Put(PdfText.Numbers(cyan, magenta, yellow, black) + " k");

    /// <summary>Colour of strokes in process inks, each 0 to 1.</summary>
    public void StrokeCmyk(double cyan, double magenta, double yellow, double black) => Put(PdfText.Numbers(cyan, magenta, yellow, black) + " K");

    /// <summary>Fills in a named separation, tint 0 to 1.</summary>
    public void FillSpot(PdfSpot spot, double tint) => Put(Invariant($"/{Use(spaces, "S", file.SpotSpace(spot))} cs {PdfText.Number(tint)} scn"));

    /// <summary>Strokes in a named separation, tint 0 to 1.</summary>
    public void StrokeSpot(PdfSpot spot, double tint) => Put(Invariant($"/{Use(spaces, "S", file.SpotSpace(spot))} CS {PdfText.Number(tint)} SCN"));

    /// <summary>Fills in several inks at once through one DeviceN space; a process ink is named <c>Cyan</c>, <c>Magenta</c>, <c>Yellow</c>, <c>Black</c>.</summary>
    public void FillDeviceN(IReadOnlyList<PdfSpot> inks, IReadOnlyList<double> tints)
    {
        if (tints.Count != inks.Count)
            throw new ArgumentException(Invariant($"DeviceN: found {tints.Count} tints; wanted {inks.Count}."), nameof(tints));
        Put(Invariant($"/{Use(spaces, "N", file.DeviceNSpace(inks))} cs {PdfText.Numbers(tints)} scn"));
    }

    /// <summary>Switches overprint of fills and strokes; process zeros then leave what lies below.</summary>
    public void Overprint(bool on) =>
        Put(Invariant($"/{UseState(on ? "<< /Type /ExtGState /OP true /op true /OPM 1 >>" : "<< /Type /ExtGState /OP false /op false /OPM 0 >>")} gs"));

    /// <summary>Opacity of fills and pictures, 0 to 1.</summary>
    public void Opacity(double share)
    {
        IsTransparent |= share < 1;
        Put(Invariant($"/{UseState(Invariant($"<< /Type /ExtGState /ca {PdfText.Number(Bounds.Within(share, 0, 1))} >>"))} gs"));
    }

    /// <summary>Width of strokes, mm; 0 is the thinnest line a device can draw.</summary>
    public void LineWidth(double mm) => Put(PdfText.Number(mm) + " w");

    /// <summary>Starts a part of the path.</summary>
    public void MoveTo(double xMm, double yMm) => Put(PdfText.Numbers(xMm, yMm) + " m");

    /// <summary>A straight line.</summary>
    public void LineTo(double xMm, double yMm) => Put(PdfText.Numbers(xMm, yMm) + " l");

    /// <summary>A cubic curve with two handles.</summary>
    public void CurveTo(double x1Mm, double y1Mm, double x2Mm, double y2Mm, double xMm, double yMm) => Put(PdfText.Numbers(x1Mm, y1Mm, x2Mm, y2Mm, xMm, yMm) + " c");

    /// <summary>Closes the part.</summary>
    public void ClosePath() => Put("h");

    /// <summary>Adds a rectangle to the path.</summary>
    public void Rectangle(RectMm rect) => Put(PdfText.Numbers(rect.XMm, rect.YMm, rect.WidthMm, rect.HeightMm) + " re");

    /// <summary>Fills the path.</summary>
    public void Fill(bool evenOdd = false) => Put(evenOdd ? "f*" : "f");

    /// <summary>Strokes the path.</summary>
    public void Stroke() => Put("S");

    /// <summary>What follows shows only inside the path, until the end of <see cref="Apart"/>.</summary>
    public void Clip(bool evenOdd = false)
    {
        if (open == 0)
            throw new InvalidOperationException("Clip is wanted inside Apart, else it never ends.");
        Put(evenOdd ? "W* n" : "W n");
    }

    /// <summary>Fills the clip with colours that change along a line; stops ascending from 0 to 1, colours in sRGB.</summary>
    public void LinearShading(PointMm from, PointMm to, IReadOnlyList<(double At, double Red, double Green, double Blue)> stops) =>
        Put(Invariant($"/{Use(shadings, "H", file.AddObject(PdfShading.Linear(file.RgbSpace, from, to, stops)))} sh"));

    /// <summary>Draws a picture upright over a rectangle.</summary>
    public void Picture(PdfImage image, RectMm place)
    {
        string name = Use(pictures, "P", image.ObjectId);
        Apart(() =>
        {
            Transform(place.WidthMm, 0, 0, place.HeightMm, place.XMm, place.YMm);
            Put(Invariant($"/{name} Do"));
        });
    }

    /// <summary>Shows glyphs of an embedded font on a line that starts at a point.</summary>
    /// <param name="font">The font.</param>
    /// <param name="sizeMm">Size of the em, mm.</param>
    /// <param name="start">Start of the base line.</param>
    /// <param name="glyphs">Glyphs with their places along the line.</param>
    /// <exception cref="ArgumentException">The font is not embedded.</exception>
    public void Glyphs(PdfFont font, double sizeMm, PointMm start, IReadOnlyList<PdfGlyph> glyphs)
    {
        TrueTypeFont shapes = font.File ?? throw new ArgumentException(Invariant($"{font.Name} is not embedded; wanted a font with shapes."), nameof(font));
        StringBuilder line = new();
        double pen = 0;
        foreach (PdfGlyph glyph in glyphs)
        {
            // Between the end of one glyph and the place of the next: kerning, in thousandths of the em, counted backward.
            double shift = (pen - glyph.XMm) / sizeMm * 1000;
            if (Math.Abs(shift) > 0.5)
                line.Append(CultureInfo.InvariantCulture, $" {Math.Round(shift, 1)} ");
            line.Append(CultureInfo.InvariantCulture, $"<{glyph.Id:X4}>");
            pen = glyph.XMm + (sizeMm * shapes.Advance(glyph.Id) / shapes.UnitsPerEm);
            if (!font.Shown.TryGetValue(glyph.Id, out string? known) || known.Length == 0)
                font.Shown[glyph.Id] = glyph.Text;
        }

        ShowText(font, sizeMm, start, Invariant($"[{line}] TJ"));
    }

    /// <summary>Shows text in a font that is only named.</summary>
    public void NamedText(PdfFont font, double sizeMm, PointMm start, string text) =>
        ShowText(font, sizeMm, start, "<" + Convert.ToHexString(Encoding.Latin1.GetBytes(text)) + "> Tj");

    /// <summary>The operators.</summary>
    internal string Finish() => code.ToString();

    /// <summary>Entries of the page's resources.</summary>
    internal string Resources() => string.Join('\n', new[]
    {
        Group("ColorSpace", spaces), Group("ExtGState", states), Group("XObject", pictures), Group("Font", fonts), Group("Shading", shadings), Group("Properties", layers),
    }.Where(g => g.Length > 0));

    private static string Group(string name, SortedDictionary<string, string> entries) =>
        entries.Count == 0 ? "" : Invariant($"/{name} << {string.Join(' ', entries.Select(e => Invariant($"/{e.Key} {e.Value}")))} >>");

    private static string Use(SortedDictionary<string, string> group, string letter, int id)
    {
        string name = Invariant($"{letter}{id}");
        group[name] = Invariant($"{id} 0 R");
        return name;
    }

    private void ShowText(PdfFont font, double sizeMm, PointMm start, string show) =>
        Put(Invariant($"BT /{Use(fonts, "F", font.ObjectId)} {PdfText.Number(sizeMm)} Tf {PdfText.Numbers(start.XMm, start.YMm)} Td {show} ET"));

    private string UseSpace(string space, string name)
    {
        spaces[name] = space;
        return name;
    }

    private string UseState(string state)
    {
        foreach ((string known, string value) in states)
        {
            if (value == state)
                return known;
        }

        string name = Invariant($"G{states.Count}");
        states[name] = state;
        return name;
    }

    private void Put(string line) => code.Append(line).Append('\n');
}
