using System.Text;

namespace Laydown.Plan.Drawings;

/// <summary>Draws SVG text: the same marks in a page, in a file of its own and in a PDF.</summary>
/// <remarks>
/// Every mark has presentation attributes for paper and a class whose colour a page sets through its custom properties
/// <c>--ink</c>, <c>--quiet</c>, <c>--edge</c>, <c>--act</c> and <c>--sheet</c> (light or dark). Hatches are drawn line by line
/// rather than by pattern, so that several drawings in one page cannot disturb each other and every reader shows them.
/// </remarks>
internal sealed class SvgPaper(double width, double height, string title, string description)
{
    private const string Style =
        ".ld-edge,.ld-hair,.ld-broken{stroke:var(--ink,#161616)}.ld-faint{stroke:var(--edge,#767676)}.ld-accent{stroke:var(--act,#00566b)}"
        + ".ld-paper{fill:var(--sheet,#ffffff)}.ld-halo{stroke:var(--sheet,#ffffff)}.ld-solid{fill:var(--ink,#161616)}.ld-mark{fill:var(--act,#00566b)}"
        + ".ld-word{fill:var(--ink,#161616)}.ld-quiet{fill:var(--quiet,#505050)}.ld-note{fill:var(--act,#00566b)}";

    private readonly StringBuilder marks = new();

    /// <summary>A rectangle, bare or on paper.</summary>
    internal void Rect(double x, double y, double w, double h, Pen pen, bool onPaper = false) => marks.Append(
        Invariant($"<rect x=\"{x:0.##}\" y=\"{y:0.##}\" width=\"{w:0.##}\" height=\"{h:0.##}\" {Fill(onPaper, pen)}/>\n"));

    /// <summary>A straight line.</summary>
    internal void Line(double x1, double y1, double x2, double y2, Pen pen) =>
        Path(Invariant($"M{x1:0.##} {y1:0.##}L{x2:0.##} {y2:0.##}"), pen);

    /// <summary>Any line.</summary>
    internal void Path(string data, Pen pen, bool onPaper = false) =>
        marks.Append(Invariant($"<path d=\"{data}\" {Fill(onPaper, pen)}/>\n"));

    /// <summary>A broad line in the colour of the paper, so that a line over it stands clear of hatches.</summary>
    internal void Halo(string data) =>
        marks.Append(Invariant($"<path class=\"ld-halo\" d=\"{data}\" fill=\"none\" stroke=\"#ffffff\" stroke-width=\"5\" stroke-linecap=\"round\"/>\n"));

    /// <summary>A filled shape: in ink, or in the accent.</summary>
    internal void Solid(string data, bool accent) => marks.Append(accent
        ? Invariant($"<path class=\"ld-mark\" d=\"{data}\" fill=\"#00566b\"/>\n")
        : Invariant($"<path class=\"ld-solid\" d=\"{data}\" fill=\"#161616\"/>\n"));

    /// <summary>Paper without a line, so that what lies under it is hidden.</summary>
    internal void Blank(double x, double y, double w, double h) => marks.Append(
        Invariant($"<rect class=\"ld-paper\" x=\"{x:0.##}\" y=\"{y:0.##}\" width=\"{w:0.##}\" height=\"{h:0.##}\" fill=\"#ffffff\"/>\n"));

    /// <summary>Text on its base line; <paramref name="anchor"/> is start, middle or end; <paramref name="turn"/> in degrees clockwise.</summary>
    internal void Text(double x, double y, string text, Lettering kind, double size = 13, string anchor = "start", double turn = 0)
    {
        string turned = turn == 0 ? "" : Invariant($" transform=\"rotate({turn:0} {x:0.##} {y:0.##})\"");
        marks.Append(Invariant($"<text x=\"{x:0.##}\" y=\"{y:0.##}\" {Letters(kind)} font-size=\"{size:0.##}\" text-anchor=\"{anchor}\"{turned}>{Escaped(text)}</text>\n"));
    }

    /// <summary>Parallel lines within a rectangle, <paramref name="degrees"/> from level: 0, 45, 90 or 135.</summary>
    internal void Hatch(double x, double y, double w, double h, int degrees, double step, Pen pen = Pen.Hair)
    {
        string data = Hatching.Lines(x, y, w, h, degrees, step);
        if (data.Length > 0)
            Path(data, pen);
    }

    /// <summary>A grid of dots within a rectangle, every other row shifted.</summary>
    internal void Dots(double x, double y, double w, double h, double step)
    {
        string data = Hatching.Dots(x, y, w, h, step);
        if (data.Length > 0)
            marks.Append(Invariant($"<path class=\"ld-hair\" d=\"{data}\" fill=\"none\" stroke=\"#161616\" stroke-width=\"1.5\" stroke-linecap=\"round\"/>\n"));
    }

    /// <summary>Marks of a drawing's own.</summary>
    internal void Raw(string svg) => marks.Append(svg);

    /// <summary>A number in a circle.</summary>
    internal void Number(double x, double y, int number, bool accent = false)
    {
        Pen pen = accent ? Pen.Accent : Pen.Edge;
        marks.Append(Invariant($"<circle cx=\"{x:0.##}\" cy=\"{y:0.##}\" r=\"10\" {Fill(true, pen)}/>\n"));
        Text(x, y + 4.2, Invariant($"{number}"), accent ? Lettering.Accent : Lettering.Figure, 12, "middle");
    }

    /// <summary>The drawing as SVG text.</summary>
    /// <param name="fixedSize">Whether width and height are given; without, it fills what holds it.</param>
    internal string Done(bool fixedSize = true)
    {
        string size = fixedSize ? Invariant($" width=\"{width:0.##}\" height=\"{height:0.##}\"") : "";
        return Invariant($"<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"ld-drawing\" role=\"img\" viewBox=\"0 0 {width:0.##} {height:0.##}\"{size}>\n")
            + Invariant($"<title>{Escaped(title)}</title>\n<desc>{Escaped(description)}</desc>\n<style>{Style}</style>\n{marks}</svg>\n");
    }

    /// <summary>Text safe within XML: customers' words come here, so what XML cannot hold is left out.</summary>
    private static string Escaped(string text)
    {
        StringBuilder safe = new(text.Length + 16);
        foreach (Rune rune in text.EnumerateRunes())
            _ = rune.Value switch
            {
                '<' => safe.Append("&lt;"),
                '>' => safe.Append("&gt;"),
                '&' => safe.Append("&amp;"),
                '"' => safe.Append("&quot;"),
                < 0x20 or 0xFFFE or 0xFFFF => safe.Append(' '),
                _ => safe.Append(rune.ToString()),
            };

        return safe.ToString();
    }

    private static string Fill(bool onPaper, Pen pen) => pen switch
    {
        Pen.Edge => Invariant($"class=\"ld-edge{Paper(onPaper)}\" {Ground(onPaper)} stroke=\"#161616\" stroke-width=\"1.3\""),
        Pen.Hair => Invariant($"class=\"ld-hair{Paper(onPaper)}\" {Ground(onPaper)} stroke=\"#161616\" stroke-width=\"0.6\""),
        Pen.Faint => Invariant($"class=\"ld-faint{Paper(onPaper)}\" {Ground(onPaper)} stroke=\"#767676\" stroke-width=\"0.6\""),
        Pen.Broken => Invariant($"class=\"ld-broken{Paper(onPaper)}\" {Ground(onPaper)} stroke=\"#161616\" stroke-width=\"0.7\" stroke-dasharray=\"5 3\""),
        _ => Invariant($"class=\"ld-accent{Paper(onPaper)}\" {Ground(onPaper)} stroke=\"#00566b\" stroke-width=\"1.8\""),
    };

    private static string Paper(bool onPaper) => onPaper ? " ld-paper" : "";

    private static string Ground(bool onPaper) => onPaper ? "fill=\"#ffffff\"" : "fill=\"none\"";

    private static string Letters(Lettering kind) => kind switch
    {
        Lettering.Name => "class=\"ld-word\" fill=\"#161616\" font-family=\"B612, sans-serif\" font-weight=\"700\"",
        Lettering.Word => "class=\"ld-word\" fill=\"#161616\" font-family=\"B612, sans-serif\"",
        Lettering.Quiet => "class=\"ld-quiet\" fill=\"#505050\" font-family=\"B612, sans-serif\"",
        Lettering.Figure => "class=\"ld-word\" fill=\"#161616\" font-family=\"B612 Mono, monospace\"",
        _ => "class=\"ld-note\" fill=\"#00566b\" font-family=\"B612, sans-serif\" font-weight=\"700\"",
    };
}
