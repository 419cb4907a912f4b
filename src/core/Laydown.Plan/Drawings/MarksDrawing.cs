using Laydown.Layout.Marks;

namespace Laydown.Plan.Drawings;

/// <summary>Printed marks on the drawing of a sheet: each where it is printed, lines and discs never too small to be seen.</summary>
internal static class MarksDrawing
{
    private const double Least = 1.6;

    /// <summary>Draws them.</summary>
    internal static void Draw(SvgPaper paper, SheetView view, IReadOnlyList<SheetMark> marks)
    {
        foreach (SheetMark mark in marks)
        {
            (double x, double y, double w, double h) = view.Of(mark.Box);
            double cx = x + (w / 2), cy = y + (h / 2);
            switch (mark.Kind)
            {
                case MarkKind.Disc or MarkKind.FaceCross:
                    double r = Math.Max(Least, mark.InkMm * view.PxPerMm / 2);
                    paper.Solid(Invariant($"M{cx - r:0.##} {cy:0.##}a{r:0.##} {r:0.##} 0 1 0 {2 * r:0.##} 0a{r:0.##} {r:0.##} 0 1 0 {-2 * r:0.##} 0Z"), accent: false);
                    break;
                case MarkKind.Label:
                    paper.Blank(x, y, w, h);
                    paper.Rect(x, y, w, h, Pen.Hair);
                    break;
                case MarkKind.Code:
                    double side = Math.Max(3, w);
                    paper.Blank(cx - (side / 2), cy - (side / 2), side, side);
                    paper.Hatch(cx - (side / 2), cy - (side / 2), side, side, 45, 2);
                    paper.Rect(cx - (side / 2), cy - (side / 2), side, side, Pen.Hair);
                    break;
                default:
                    bool upright = h > w;
                    double length = Math.Max(upright ? h : w, 2 * Least);
                    paper.Line(upright ? cx : cx - (length / 2), upright ? cy - (length / 2) : cy, upright ? cx : cx + (length / 2), upright ? cy + (length / 2) : cy, Pen.Hair);
                    break;
            }
        }
    }
}
