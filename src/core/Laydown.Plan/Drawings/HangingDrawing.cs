using Laydown.Layout.Panels;
using Laydown.Measures;

namespace Laydown.Plan.Drawings;

/// <summary>Draws how the panels of a graphic are hung: numbers in their order, seams to scale with what overlaps, which lies over which, distances in mm.</summary>
public static class HangingDrawing
{
    private const double Width = 760, Left = 66, Top = 74, MostWide = 650, MostHigh = 430;

    /// <summary>The plan as SVG text, 760 units wide, seen as the graphic is looked at.</summary>
    /// <param name="title">What it is, for people.</param>
    /// <param name="plan">The panels.</param>
    /// <param name="bleedMm">Bleed on each side of the graphic, mm: the finished edge is drawn, and distances count from it; 0 to count from the edge of the print.</param>
    public static string Draw(string title, PanelPlan plan, double bleedMm = 0)
    {
        ArgumentNullException.ThrowIfNull(plan);
        double scale = Math.Min(MostWide / plan.Graphic.WidthMm, MostHigh / plan.Graphic.HeightMm);
        double high = plan.Graphic.HeightMm * scale;
        View view = new(scale, plan.Graphic.HeightMm);
        SvgPaper paper = new(Width, Top + high + 88, Invariant($"Hanging plan, {title}"), HangingWords.Describe(plan));

        foreach (Panel panel in plan.Panels)
            Sheet(paper, view, panel);
        foreach (PanelSeam seam in plan.Seams)
            Seam(paper, view, plan, seam);
        if (bleedMm > 0)
        {
            (double x, double y, double w, double h) = view.Of(new RectMm(0, 0, plan.Graphic.WidthMm, plan.Graphic.HeightMm).Grown(-bleedMm));
            paper.Rect(x, y, w, h, Pen.Broken);
        }

        foreach (Panel panel in plan.Panels)
            Named(paper, view, panel);
        Sizes(paper, view, plan, bleedMm);
        double foot = Top + high + 34, barEnd = Sizing.Bar(paper, Left, foot, scale);
        paper.Text(barEnd + 40, foot + 4, HangingWords.Order(plan), Lettering.Quiet, 11);
        paper.Text(barEnd + 40, foot + 19, HangingWords.Legend(plan, bleedMm), Lettering.Quiet, 11);
        if (plan.Turned)
            paper.Text(barEnd + 40, foot + 34, "printed lying on their side, all the same way", Lettering.Quiet, 11);
        return paper.Done();
    }

    private static void Sheet(SvgPaper paper, View view, Panel panel)
    {
        (double x, double y, double w, double h) = view.Of(panel.Part);
        paper.Rect(x, y, w, h, Pen.Hair, onPaper: true);
    }

    // Where both show the same the stripe is hatched; the full line is the edge of the panel that lies over.
    private static void Seam(SvgPaper paper, View view, PanelPlan plan, PanelSeam seam)
    {
        (double x, double y, double w, double h) = view.Of(seam.Zone);
        const double least = 3;
        double dx = seam.Upright ? Math.Max(0, least - w) : 0, dy = seam.Upright ? 0 : Math.Max(0, least - h);
        (x, y, w, h) = (x - (dx / 2), y - (dy / 2), w + dx, h + dy);
        if (seam.OverlapMm < 0)
        {
            paper.Blank(x, y, w, h);
            paper.Rect(x, y, w, h, Pen.Broken);
            return;
        }

        if (seam.OverlapMm > 0)
        {
            paper.Blank(x, y, w, h);
            paper.Hatch(x, y, w, h, 45, 4, Pen.Faint);
        }

        RectMm over = plan.Panels[seam.Over - 1].Part, under = plan.Panels[seam.Under - 1].Part;
        (bool first, bool second) = seam.Upright ? (over.XMm > under.XMm, over.XMm < under.XMm) : (over.YMm < under.YMm, over.YMm > under.YMm);
        Line(paper, seam.Upright, x, y, w, h, atStart: true, first ? Pen.Accent : Pen.Broken);
        Line(paper, seam.Upright, x, y, w, h, atStart: false, second ? Pen.Accent : Pen.Broken);
    }

    private static void Line(SvgPaper paper, bool upright, double x, double y, double w, double h, bool atStart, Pen pen)
    {
        if (upright)
            paper.Line(atStart ? x : x + w, y, atStart ? x : x + w, y + h, pen);
        else
            paper.Line(x, atStart ? y : y + h, x + w, atStart ? y : y + h, pen);
    }

    private static void Named(SvgPaper paper, View view, Panel panel)
    {
        (double x, double y, double w, double h) = view.Of(panel.Part);
        double cx = x + (w / 2), cy = y + (h / 2), size = Math.Clamp(Math.Min(w, h) / 3, 11, 34);
        paper.Text(cx, cy, Invariant($"{panel.Number}"), Lettering.Name, size, "middle");
        string words = Invariant($"{panel.Part.WidthMm:0.#} × {panel.Part.HeightMm:0.#}");
        if (w > (words.Length * 6.6) + 14 && h > size + 26)
            paper.Text(cx, cy + 17, words, Lettering.Figure, 11, "middle");
        else if (h > (words.Length * 6.6) + 30 && w > 30)
            paper.Text(cx + (w / 2) - 8, cy + (h / 4), words, Lettering.Figure, 10, "middle", -90);
    }

    private static void Sizes(SvgPaper paper, View view, PanelPlan plan, double bleedMm)
    {
        double right = Left + (plan.Graphic.WidthMm * view.Scale), bottom = Top + (plan.Graphic.HeightMm * view.Scale);
        Sizing.Level(paper, Left, right, Top - 48, Sizing.Length(plan.Graphic.WidthMm));
        Sizing.Upright(paper, Left - 40, Top, bottom, Sizing.Length(plan.Graphic.HeightMm));

        // Edges of panels that lie over, where the next is set to: what a rule against the wall shows.
        List<double> columns = [.. plan.Seams.Where(s => s.Upright).Select(s => EdgeOf(plan, s)).Distinct().Order()];
        Marks(paper, columns, bleedMm, at => (Left + (at * view.Scale), Top - 6), upright: false);
        List<double> rows = [.. plan.Seams.Where(s => !s.Upright && plan.Panels[s.Under - 1].Column == 1).Select(s => EdgeOf(plan, s)).Distinct().Order()];
        Marks(paper, rows, bleedMm, at => (Left - 6, Top + ((plan.Graphic.HeightMm - at) * view.Scale)), upright: true);
    }

    private static void Marks(SvgPaper paper, IReadOnlyList<double> places, double bleedMm, Func<double, (double X, double Y)> at, bool upright)
    {
        double last = double.NegativeInfinity;
        foreach (double place in places)
        {
            (double x, double y) = at(place);
            double along = upright ? -y : x;
            if (upright)
                paper.Line(x, y, x + 6, y, Pen.Hair);
            else
                paper.Line(x, y, x, y + 6, Pen.Hair);
            if (along - last < (upright ? 12 : 46))
                continue;
            last = along;
            paper.Text(upright ? x - 2 : x, upright ? y + 4 : y - 4, Invariant($"{place - bleedMm:0.#}"), Lettering.Figure, 10, upright ? "end" : "middle");
        }
    }

    // The edge that is seen: of the panel that lies over.
    private static double EdgeOf(PanelPlan plan, PanelSeam seam)
    {
        RectMm over = plan.Panels[seam.Over - 1].Part, under = plan.Panels[seam.Under - 1].Part;
        return seam.Upright ? over.XMm > under.XMm ? over.XMm : over.RightMm : over.YMm > under.YMm ? over.YMm : over.TopMm;
    }

    private sealed record View(double Scale, double HeightMm)
    {
        internal (double X, double Y, double W, double H) Of(RectMm r) =>
            (Left + (r.XMm * Scale), Top + ((HeightMm - r.TopMm) * Scale), r.WidthMm * Scale, r.HeightMm * Scale);
    }
}
