using System.Xml.Linq;
using Laydown.Geometry.Outlines;
using Laydown.Measures;

namespace Laydown.Formats.Svg;

/// <summary>Reads lines to cut along from an SVG: paths, rectangles, circles, ellipses, lines, polylines, polygons, with their transforms. [SVG11]</summary>
public static class SvgContours
{
    /// <summary>Most corners of all lines, curves flattened.</summary>
    public const int MostPoints = 5_000_000;

    private static readonly SvgLimits Limits = new(Elements: 300_000, Depth: 64, Pixels: 1, SideMm: 1e6);
    private static readonly string[] Groups = ["svg", "g", "a", "switch"];
    private static readonly string[] Silent = ["title", "desc", "metadata", "defs", "style", "symbol", "clipPath", "mask", "pattern", "marker", "namedview"];

    /// <summary>The lines, or why they cannot be taken.</summary>
    /// <param name="file">Name of the file, for faults.</param>
    /// <param name="stream">Its bytes.</param>
    /// <param name="toleranceMm">How far flattened curves may lie off, mm.</param>
    public static Reading<SvgLines> Read(string file, Stream stream, double toleranceMm = Curves.UsualToleranceMm) =>
        new SvgCleaning(file, Limits).Load(stream).Then(document => new Walk(file, toleranceMm).Of(document.Root!));

    /// <summary>The lines of path data in mm, y upward.</summary>
    /// <param name="file">Name of the file the data stands in, for faults.</param>
    /// <param name="field">Field it stands in.</param>
    /// <param name="data">The data.</param>
    /// <param name="toleranceMm">How far flattened curves may lie off, mm.</param>
    public static Reading<IReadOnlyList<RawContour>> Path(string file, string field, string data, double toleranceMm = Curves.UsualToleranceMm)
    {
        ArgumentNullException.ThrowIfNull(data);
        (IReadOnlyList<(List<PointMm> Points, bool Closed)>? parts, int at) = new SvgPathData(data, toleranceMm).Read();
        return parts is not null
            ? Reading.Of<IReadOnlyList<RawContour>>([.. parts.Where(p => p.Points.Count > 1).Select(p => new RawContour(field, p.Points, p.Closed))])
            : Reading.Refused<IReadOnlyList<RawContour>>(new InputFault(file, null, field, Near(data, at), "path data, such as M 0 0 L 100 0 L 50 80 Z"));
    }

    private static string Near(string data, int at) => Invariant($"at character {at + 1} \"{data[Math.Max(0, at - 10)..Math.Min(data.Length, at + 10)]}\"");

    private sealed class Walk(string file, double toleranceMm)
    {
        private readonly List<RawContour> contours = [];
        private readonly SortedDictionary<string, int> leftOut = new(StringComparer.Ordinal);
        private readonly List<InputFault> faults = [];
        private long points;

        internal Reading<SvgLines> Of(XElement root)
        {
            (SvgTransform toMm, Finding? unit) = Scale(root);
            Children(root, toMm);
            if (points > MostPoints)
                faults.Add(new(file, null, "paths", Invariant($"more than {MostPoints} corners"), Invariant($"at most {MostPoints}")));
            IEnumerable<Finding> lost = leftOut.Select(l => new Finding(
                "svg-left-out", Severity.Warn, null, null, Invariant($"<{l.Key}> is no line that can be cut along."), Invariant($"{l.Value} of them"),
                "path, rect, circle, ellipse, line, polyline, polygon", "left out", "SVG11"));
            return faults.Count > 0
                ? Reading.Refused<SvgLines>([.. faults.Take(50)])
                : Reading.Of(new SvgLines(contours, [.. unit is null ? [] : new[] { unit }, .. lost]));
        }

        // Millimetres, y upward: the lower edge of the drawing is 0.
        private static (SvgTransform ToMm, Finding? Unit) Scale(XElement root)
        {
            double? width = SvgLength.Mm((string?)root.Attribute("width")), height = SvgLength.Mm((string?)root.Attribute("height"));
            double[]? box = SvgLength.ViewBox((string?)root.Attribute("viewBox"));
            const double Px = 25.4 / 96;
            double x = box is null ? Px : (width ?? box[2] * Px) / box[2], y = box is null ? Px : (height ?? box[3] * Px) / box[3];

            // Where the two differ the drawing is shown at the smaller scale, in the middle; cut lines are never stretched.
            double scale = Math.Min(x, y), tall = height ?? (box is null ? 0 : box[3] * scale);
            double left = box is null ? 0 : (((width ?? box[2] * scale) - (box[2] * scale)) / 2) - (box[0] * scale);
            double top = box is null ? 0 : ((tall - (box[3] * scale)) / 2) - (box[1] * scale);
            bool guessed = width is null || height is null || !HasUnit((string?)root.Attribute("width"));
            return (new(scale, 0, 0, -scale, left, tall - top), !guessed ? null : new(
                "svg-units", Severity.Warn, null, null, "The drawing does not say its size in a unit of length.",
                Invariant($"width {(string?)root.Attribute("width") ?? "missing"}"), "width and height with a unit, such as 210mm", "taken as 96 units to the inch", "SVG11"));
        }

        private static bool HasUnit(string? length) => length?.Trim() is { Length: > 2 } text && text[^2..].ToLowerInvariant() is "mm" or "cm" or "in" or "pt" or "pc";

        private void Children(XElement parent, SvgTransform outer)
        {
            foreach (XElement element in parent.Elements())
            {
                string name = element.Name.LocalName;
                if (Silent.Contains(name) || IsHidden(element) || points > MostPoints)
                    continue;
                if (SvgTransform.Read((string?)element.Attribute("transform")) is not { } own)
                {
                    faults.Add(new(file, null, Invariant($"<{name}> transform"), Short((string?)element.Attribute("transform")), "transforms such as translate(10 20) rotate(90)"));
                    continue;
                }

                SvgTransform inner = outer.After(own);
                if (Groups.Contains(name))
                    Children(element, inner);
                else
                    Draw(element, name, inner);
            }
        }

        private void Draw(XElement element, string name, SvgTransform transform)
        {
            double N(string attribute) => Length((string?)element.Attribute(attribute));
            string field = Invariant($"<{name}> {(contours.Count + 1)}{((string?)element.Attribute("id") is { } id ? " #" + Short(id) : "")}");
            string? data = name switch
            {
                "path" => (string?)element.Attribute("d") ?? "",
                "rect" => Rect(N("x"), N("y"), N("width"), N("height"), N("rx"), N("ry")),
                "circle" => Ring(N("cx"), N("cy"), N("r"), N("r")),
                "ellipse" => Ring(N("cx"), N("cy"), N("rx"), N("ry")),
                "line" => Invariant($"M{N("x1"):R} {N("y1"):R}L{N("x2"):R} {N("y2"):R}"),
                "polyline" => "M" + (string?)element.Attribute("points"),
                "polygon" => "M" + (string?)element.Attribute("points") + "Z",
                _ => null,
            };
            if (data is null)
                leftOut[name] = leftOut.GetValueOrDefault(name) + 1;
            else if (data.Length > 1)
                Add(field, data, transform);
        }

        private void Add(string field, string data, SvgTransform transform)
        {
            (IReadOnlyList<(List<PointMm> Points, bool Closed)>? parts, int at) = new SvgPathData(data, Math.Clamp(toleranceMm / Math.Max(transform.Growth, 1e-9), 1e-6, 1000)).Read();
            if (parts is null)
                faults.Add(new(file, null, field, Near(data, at), "path data, such as M 0 0 L 100 0 L 50 80 Z"));
            foreach ((List<PointMm> line, bool closed) in (parts ?? []).Where(p => p.Points.Count > 1))
            {
                points += line.Count;
                contours.Add(new(field, [.. line.Select(transform.Of)], closed));
            }
        }

        private static string? Rect(double x, double y, double w, double h, double rx, double ry)
        {
            if (!(w > 0) || !(h > 0))
                return "";
            (rx, ry) = (Math.Min(rx > 0 ? rx : ry, w / 2), Math.Min(ry > 0 ? ry : rx, h / 2));
            return rx <= 0
                ? Invariant($"M{x:R} {y:R}h{w:R}v{h:R}h{-w:R}Z")
                : Invariant($"M{x + rx:R} {y:R}h{w - (2 * rx):R}a{rx:R} {ry:R} 0 0 1 {rx:R} {ry:R}v{h - (2 * ry):R}a{rx:R} {ry:R} 0 0 1 {-rx:R} {ry:R}")
                    + Invariant($"h{-w + (2 * rx):R}a{rx:R} {ry:R} 0 0 1 {-rx:R} {-ry:R}v{-h + (2 * ry):R}a{rx:R} {ry:R} 0 0 1 {rx:R} {-ry:R}Z");
        }

        private static string Ring(double x, double y, double rx, double ry) => rx > 0 && ry > 0
            ? Invariant($"M{x + rx:R} {y:R}A{rx:R} {ry:R} 0 0 1 {x - rx:R} {y:R}A{rx:R} {ry:R} 0 0 1 {x + rx:R} {y:R}Z")
            : "";

        // Units of the drawing; a length with a unit is 96 to the inch. What is no number counts as nothing, as it does when it is drawn.
        private static double Length(string? text)
        {
            string value = text?.Trim() ?? "";
            bool under = value.StartsWith('-');
            double? size = SvgLength.Mm(value.TrimStart('-', '+')) * 96 / 25.4;
            return (under ? -1 : 1) * (size ?? 0);
        }

        private static bool IsHidden(XElement element) =>
            (string?)element.Attribute("display") == "none" || ((string?)element.Attribute("style") ?? "").Replace(" ", "", StringComparison.Ordinal).Contains("display:none", StringComparison.Ordinal);

        private static string Short(string? text) => text is null ? "nothing" : text.Length > 40 ? text[..40] + "…" : text;
    }
}
