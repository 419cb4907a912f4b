using System.Security;
using System.Text;
using Laydown.Formats.Dxf;
using Laydown.Formats.PdfWriting;
using Laydown.Layout.Jobs;
using Laydown.Measures;

namespace Laydown.Formats.Layouts;

/// <summary>Writes layouts of jobs as cut paths: SVG and DXF one sheet a file, PDF one sheet a page. Blanks in lanes are drawn on their belt.</summary>
public static class LayoutFiles
{
    private static readonly PdfSpot CutInk = new("Cut", 0, 1, 0, 0);

    /// <summary>Sheets of a layout as SVG in millimetres; groups named as in [ISO19593-1].</summary>
    public static IReadOnlyList<byte[]> Svg(JobLayout layout)
    {
        ArgumentNullException.ThrowIfNull(layout);
        if (layout.Lanes is { } lanes)
            return [Encoding.UTF8.GetBytes(new LaneDrawing(layout.Job, lanes).Svg(Escaped(Title(layout)), Escaped))];
        return [.. LayoutDrawing.Of(layout).Select((d, i) => Encoding.UTF8.GetBytes(Svg(layout, d, i)))];
    }

    /// <summary>Sheets of a layout as DXF, mm: cuts on layer <c>CUT</c>, cuts across a roll on <c>CUT_ACROSS</c>, the stock on <c>STOCK</c>; of a belt zones, lays, pins and blanks on layers of their own.</summary>
    public static IReadOnlyList<byte[]> Dxf(JobLayout layout)
    {
        ArgumentNullException.ThrowIfNull(layout);
        return layout.Lanes is { } lanes ? [Dxf(new LaneDrawing(layout.Job, lanes))] : [.. LayoutDrawing.Of(layout).Select(Dxf)];
    }

    /// <summary>The layout as PDF: a page for each sheet in its own size, cuts in the separation <c>Cut</c> on a layer with its processing step.</summary>
    /// <param name="layout">The layout; with at least one sheet, or with lanes: then the belt in its own size on one page.</param>
    /// <param name="made">Instant written as creation date.</param>
    /// <exception cref="ArgumentException">There is no sheet.</exception>
    public static byte[] Pdf(JobLayout layout, DateTimeOffset made)
    {
        ArgumentNullException.ThrowIfNull(layout);
        if (layout.Lanes is null)
            Bounds.NotEmpty(layout.Sheets);
        using MemoryStream stream = new();
        PdfFile pdf = new(stream, Title(layout), made, null);
        if (layout.Lanes is { } lanes)
            Page(pdf, new LaneDrawing(layout.Job, lanes));
        PdfLayer cuts = new("Cutting", "Structural", "Cutting", true), edge = new("Stock", null, null, true);
        foreach (LayoutDrawing drawing in LayoutDrawing.Of(layout))
        {
            SizeMm size = drawing.Sheet.Size;
            pdf.AddPage(new(size, null, null, UnitOf(size)), canvas =>
            {
                canvas.On(edge, () => Stroke(canvas, drawing.Edge, () => canvas.StrokeCmyk(0, 0, 0, 0.3)));
                canvas.On(cuts, () => Stroke(canvas, [.. drawing.Cuts.Select(c => c.Ring)], () => canvas.StrokeSpot(CutInk, 1)));
                canvas.On(cuts, () => Stroke(canvas, drawing.Across, () => canvas.StrokeSpot(CutInk, 1), closed: false));
            });
        }

        pdf.Close();
        return stream.ToArray();
    }

    // A page of PDF has at most 14 400 units a side.
    private static double UnitOf(SizeMm size) => Math.Max(1, Math.Ceiling(Math.Max(size.WidthMm, size.HeightMm) * 72 / 25.4 / 14_400));

    private static void Page(PdfFile pdf, LaneDrawing drawing) => pdf.AddPage(new(drawing.Size, null, null, UnitOf(drawing.Size)), canvas =>
    {
        foreach (IGrouping<string, LaneLine> layer in drawing.Lines.GroupBy(l => l.Layer, StringComparer.Ordinal))
            canvas.On(new PdfLayer(layer.Key, null, null, true), () =>
            {
                foreach (LaneLine line in layer)
                    Stroke(canvas, [line.Points], () => canvas.StrokeCmyk(0, 0, 0, line.IsFaint ? 0.3 : 1), line.Closed);
            });
    });

    private static byte[] Dxf(LaneDrawing drawing)
    {
        using MemoryStream stream = new();
        DxfWriter.Write(stream, [.. drawing.Lines.Select(l => new DxfLine(l.Layer, l.Points, l.Closed))]);
        return stream.ToArray();
    }

    private static void Stroke(PdfCanvas canvas, IReadOnlyList<IReadOnlyList<PointMm>> rings, Action colour, bool closed = true) => canvas.Apart(() =>
    {
        colour();
        canvas.LineWidth(0.25);
        foreach (IReadOnlyList<PointMm> ring in rings)
        {
            canvas.MoveTo(ring[0].XMm, ring[0].YMm);
            foreach (PointMm point in ring.Skip(1))
                canvas.LineTo(point.XMm, point.YMm);
            if (closed)
                canvas.ClosePath();
            canvas.Stroke();
        }
    });

    private static byte[] Dxf(LayoutDrawing drawing)
    {
        using MemoryStream stream = new();
        DxfWriter.Write(stream, [.. drawing.Edge.Select(r => new DxfLine("STOCK", r, true)), .. drawing.Cuts.Select(c => new DxfLine("CUT", c.Ring, true)), .. drawing.Across.Select(a => new DxfLine("CUT_ACROSS", a, false))]);
        return stream.ToArray();
    }

    private static string Svg(JobLayout layout, LayoutDrawing drawing, int number)
    {
        (double w, double h) = (drawing.Sheet.Size.WidthMm, drawing.Sheet.Size.HeightMm);
        StringBuilder svg = new();
        svg.Append(Invariant($"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w:0.###}mm\" height=\"{h:0.###}mm\" viewBox=\"0 0 {w:0.###} {h:0.###}\">\n"));
        svg.Append(Invariant($"  <title>{Escaped(Title(layout))}, sheet {number + 1} of {layout.Sheets.Count}, {Escaped(drawing.Sheet.StockId)}, cut {drawing.Sheet.Repeats} times{Beside(layout.Job, drawing.Sheet)}</title>\n"));
        svg.Append("  <desc>Millimetres.</desc>\n  <g id=\"Stock\" fill=\"none\" stroke=\"#bbb\" stroke-width=\"0.5\" stroke-dasharray=\"6 4\">\n");
        foreach (IReadOnlyList<PointMm> ring in drawing.Edge)
            svg.Append(Invariant($"    <path d=\"{Data(ring, h)}\"/>\n"));
        svg.Append("  </g>\n  <g id=\"Cutting\" data-processing-step=\"Structural/Cutting\" fill=\"none\" stroke=\"#111\" stroke-width=\"0.5\">\n");
        foreach ((string piece, int copy, IReadOnlyList<PointMm> ring) in drawing.Cuts)
            svg.Append(Invariant($"    <path data-piece=\"{Escaped(piece)}\" data-copy=\"{copy}\" d=\"{Data(ring, h)}\"/>\n"));
        svg.Append("  </g>\n");
        if (drawing.Across.Count > 0)
        {
            svg.Append("  <g id=\"CutAcross\" data-processing-step=\"Structural/Cutting\" fill=\"none\" stroke=\"#111\" stroke-width=\"1\" stroke-dasharray=\"20 8\">\n");
            foreach (IReadOnlyList<PointMm> line in drawing.Across)
                svg.Append(Invariant($"    <path d=\"{Data(line, h).TrimEnd('Z')}\"/>\n"));
            svg.Append("  </g>\n");
        }

        return svg.Append("</svg>\n").ToString();
    }

    private static string Beside(LayoutJob job, JobSheet sheet) => sheet.StartMm switch
    {
        null => "",
        0 => ", left roll of two",
        { } start => Invariant($", right roll of two, starts {start:0.###} mm from the left side of the left one, {job.Rules.CentreGapMm:0.###} mm beside it"),
    };

    private static string Data(IReadOnlyList<PointMm> ring, double height) =>
        string.Concat(ring.Select((p, i) => Invariant($"{(i == 0 ? 'M' : 'L')}{p.XMm:0.####} {height - p.YMm:0.####}"))) + "Z";

    private static string Title(JobLayout layout) => string.IsNullOrWhiteSpace(layout.Job.Name) ? "Layout" : layout.Job.Name;

    private static string Escaped(string text) => SecurityElement.Escape(new string([.. text.Where(c => c >= ' ' && !char.IsSurrogate(c) && c < '\uFFFE')])) ?? "";
}
