using System.Text;
using Laydown.Raster.Passes;
using Laydown.Shop.Run;
using Laydown.Web.Design;

namespace Laydown.Web.Run;

/// <summary>Draws how the head walks over the middle of a sheet: one bar for each scan, down the feed, its blocks one below the other.</summary>
internal static class PassDrawing
{
    private const int MostScans = 12;

    private const double Wide = 24, Gap = 6, Left = 70, Top = 34, High = 300;

    /// <summary>The drawing as SVG text.</summary>
    public static string Draw(FacePasses face)
    {
        PassPlan plan = face.Plan();
        int shown = Math.Min(MostScans, plan.ScanCount), first = Math.Max(0, (plan.ScanCount - shown) / 2);
        PassScan[] scans = [.. Enumerable.Range(first, shown).Select(plan.Scan)];
        double from = scans.Min(s => s.FirstRow) * face.Head.RowMm, to = (scans.Max(s => s.LastRow) + 1) * face.Head.RowMm;
        double width = Left + (shown * (Wide + Gap)) + Gap;
        StringBuilder svg = new();
        svg.Append(Invariant($"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Say.Plain(width)} {Say.Plain(Top + High + 8)}\" "));
        svg.Append(Invariant($"width=\"{Say.Plain(width)}\" role=\"img\" aria-label=\"{Words(face, first, shown)}\">"));
        svg.Append(Invariant($"<rect x=\"{Left - 4}\" y=\"{Top}\" width=\"{Say.Plain(width - Left)}\" height=\"{High}\" fill=\"none\" stroke=\"currentColor\"/>"));
        Text(svg, Left - 9, Top + 10, "end", Invariant($"{from:0} mm"));
        Text(svg, Left - 9, Top + High, "end", Invariant($"{to:0} mm"));
        for (int i = 0; i < shown; i++)
            Bar(svg, face, scans[i], Left + (i * (Wide + Gap)), from, High / (to - from));
        return svg.Append("</svg>").ToString();
    }

    private static void Bar(StringBuilder svg, FacePasses face, PassScan scan, double x, double topMm, double scale)
    {
        Text(svg, x + (Wide / 2), Top - 20, "middle", Invariant($"{scan.Number}"));
        Text(svg, x + (Wide / 2), Top - 7, "middle", scan.Forth ? "→" : "←");

        // Blocks of the head from its end: the last layer of the face, then those laid down before it.
        for (int block = 0; block < face.Layers; block++)
        {
            int from = Math.Max(scan.FirstNozzle, block * face.Head.Nozzles), to = Math.Min(scan.LastNozzle, ((block + 1) * face.Head.Nozzles) - 1);
            if (to < from)
                continue;
            int between = face.Head.RowsBetweenNozzles;
            double rowMm = face.Head.RowMm, start = ((scan.FirstRow + ((from - scan.FirstNozzle) * between)) * rowMm) - topMm;
            double length = Math.Max(1.5, (to - from + 1) * between * rowMm * scale);
            double shade = 0.2 + (0.6 * (face.Layers - 1 - block + 1) / face.Layers);
            svg.Append(Invariant($"<rect x=\"{Say.Plain(x)}\" y=\"{Say.Plain(Top + (start * scale))}\" width=\"{Wide}\" "));
            svg.Append(Invariant($"height=\"{Say.Plain(Math.Min(length, High - (start * scale)))}\" fill=\"currentColor\" "));
            svg.Append(Invariant($"fill-opacity=\"{Say.Plain(shade)}\" stroke=\"currentColor\" stroke-width=\"0.75\"/>"));
        }
    }

    private static void Text(StringBuilder svg, double x, double y, string anchor, string words) => svg.Append(Invariant(
        $"<text x=\"{Say.Plain(x)}\" y=\"{Say.Plain(y)}\" text-anchor=\"{anchor}\" font-size=\"11\" fill=\"currentColor\">{words}</text>"));

    private static string Words(FacePasses face, int first, int shown) =>
        Invariant($"Scans {first} to {first + shown - 1} of {face.Scans}; the head moves {face.StepMm:0.00} mm down the sheet from one to the next, ") +
        Invariant($"every row lies under it {face.Head.Passes} times for each of {face.Layers} layers.");
}
