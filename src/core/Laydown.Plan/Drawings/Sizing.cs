namespace Laydown.Plan.Drawings;

/// <summary>Dimension lines, arrows and the scale bar.</summary>
internal static class Sizing
{
    private static readonly double[] BarsMm = [10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000];

    /// <summary>A level dimension between two places, its text above the line where there is room, else beside it.</summary>
    internal static void Level(SvgPaper paper, double x1, double x2, double y, string text, double size = 12)
    {
        paper.Path(Invariant($"M{x1:0.##} {y - 4:0.##}v8M{x2:0.##} {y - 4:0.##}v8M{x1:0.##} {y:0.##}H{x2:0.##}"), Pen.Hair);
        Tick(paper, x1, y);
        Tick(paper, x2, y);
        paper.Text((x1 + x2) / 2, y - 5, text, Lettering.Figure, size, "middle");
    }

    /// <summary>An upright dimension between two places, its text turned along the line.</summary>
    internal static void Upright(SvgPaper paper, double x, double y1, double y2, string text, double size = 12)
    {
        paper.Path(Invariant($"M{x - 4:0.##} {y1:0.##}h8M{x - 4:0.##} {y2:0.##}h8M{x:0.##} {y1:0.##}V{y2:0.##}"), Pen.Hair);
        Tick(paper, x, y1);
        Tick(paper, x, y2);
        paper.Text(x - 5, (y1 + y2) / 2, text, Lettering.Figure, size, "middle", -90);
    }

    /// <summary>An arrow from one place to another.</summary>
    internal static void Arrow(SvgPaper paper, double x1, double y1, double x2, double y2, bool accent = false)
    {
        double length = Math.Max(1e-9, Math.Sqrt(((x2 - x1) * (x2 - x1)) + ((y2 - y1) * (y2 - y1))));
        double ux = (x2 - x1) / length, uy = (y2 - y1) / length;
        paper.Line(x1, y1, x2 - (ux * 5), y2 - (uy * 5), accent ? Pen.Accent : Pen.Edge);
        paper.Solid(
            Invariant($"M{x2:0.##} {y2:0.##}L{x2 - (ux * 9) - (uy * 3.2):0.##} {y2 - (uy * 9) + (ux * 3.2):0.##}")
            + Invariant($"L{x2 - (ux * 9) + (uy * 3.2):0.##} {y2 - (uy * 9) - (ux * 3.2):0.##}Z"),
            accent);
    }

    /// <summary>A bar of a round length near <paramref name="wantedPx"/> long, in four parts; returns where it ends.</summary>
    internal static double Bar(SvgPaper paper, double x, double y, double pxPerMm, double wantedPx = 130)
    {
        double lengthMm = BarsMm.MinBy(mm => Math.Abs(Math.Log(mm * pxPerMm / wantedPx)));
        double part = lengthMm * pxPerMm / 4;
        paper.Rect(x, y, part * 4, 5, Pen.Hair, onPaper: true);
        paper.Solid(Invariant($"M{x:0.##} {y:0.##}h{part:0.##}v5h{-part:0.##}ZM{x + (2 * part):0.##} {y:0.##}h{part:0.##}v5h{-part:0.##}Z"), accent: false);
        paper.Text(x, y + 18, "0", Lettering.Figure, 11, "middle");
        paper.Text(x + (part * 4), y + 18, Length(lengthMm), Lettering.Figure, 11, "middle");
        return x + (part * 4);
    }

    /// <summary>A length as printed: millimetres, from 10 m on metres.</summary>
    internal static string Length(double mm) => mm >= 10_000 ? Invariant($"{mm / 1000:0.##} m") : Invariant($"{mm:0.#} mm");

    // The oblique tick of a workshop drawing instead of an arrow head: it stays legible between near lines.
    private static void Tick(SvgPaper paper, double x, double y) => paper.Path(Invariant($"M{x - 3.5:0.##} {y + 3.5:0.##}l7 -7"), Pen.Edge);
}
