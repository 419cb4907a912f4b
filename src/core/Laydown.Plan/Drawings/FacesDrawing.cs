using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Press.Machines;

namespace Laydown.Plan.Drawings;

/// <summary>Draws both faces of a sheet as they lie on the belt, side by side and to one scale: which edge lies at which lay, and which picture is up.</summary>
public static class FacesDrawing
{
    private const double Width = 760, Top = 52, First = 62, Second = 432, MostWide = 262, MostHigh = 340, Foot = 96;

    /// <summary>The faces of the first sheet of a run as SVG text, 760 units wide; across the belt to the right, feed upward.</summary>
    /// <param name="press">The press.</param>
    /// <param name="run">A run printed on both faces of boards or blanks.</param>
    /// <exception cref="ArgumentException">The run has no sheet or no lane.</exception>
    public static string Draw(PressDescription press, Run run)
    {
        ArgumentNullException.ThrowIfNull(press);
        ArgumentNullException.ThrowIfNull(run);
        Bounds.NotEmpty(run.Sheets);
        Bounds.NotEmpty(run.Belt.Lanes);
        SheetLayout sheet = run.Sheets[0];
        SheetTurn turn = FaceWords.TurnOf(run);
        bool onItsSide = run.Belt.Lanes[0].Turned ?? run.Belt.Turned, side = (turn == SheetTurn.Sideways) != onItsSide;
        SizeMm lying = onItsSide ? sheet.Sheet.Turned() : sheet.Sheet;
        double scale = Math.Min(MostWide / lying.WidthMm, MostHigh / lying.HeightMm), high = lying.HeightMm * scale;
        SvgPaper paper = new(Width, Top + high + Foot, Invariant($"Both faces of {sheet.Sheet} on the belt"), Describe(run, side, press.FarSideLay));

        Face(paper, First, "First face", sheet.Placements, sheet.Sheet, onItsSide, scale);
        Edges(paper, First, lying, scale, sideAtLeft: true, frontBelow: true);
        Lays(paper, First, lying, scale, farSide: false, "front lay");
        IReadOnlyList<Placement> turned = [.. sheet.Placements.Select(p => TurnedOver.Of(p, sheet.Sheet, turn))];
        Face(paper, Second, "Second face", turned, sheet.Sheet, onItsSide, scale);
        Edges(paper, Second, lying, scale, sideAtLeft: !side, frontBelow: side);
        Lays(paper, Second, lying, scale, farSide: side && press.FarSideLay, "front lay");

        Turning(paper, lying, scale, side);
        double barEnd = Sizing.Bar(paper, First, Top + high + 66, scale);
        paper.Text(barEnd + 44, Top + high + 76, "to scale · a: edge at the side lay on the first face · b: edge at the front lay", Lettering.Quiet, 11);
        return paper.Done();
    }

    private static void Face(SvgPaper paper, double left, string name, IReadOnlyList<Placement> pieces, SizeMm sheet, bool onItsSide, double scale)
    {
        SizeMm lying = onItsSide ? sheet.Turned() : sheet;
        double high = lying.HeightMm * scale;
        paper.Text(left, 18, name, Lettering.Name, 14);
        paper.Rect(left, Top, lying.WidthMm * scale, high, Pen.Edge, onPaper: true);
        foreach (Placement piece in pieces)
        {
            RectMm at = piece.Place;
            RectMm r = onItsSide ? new(sheet.HeightMm - at.TopMm, at.XMm, at.HeightMm, at.WidthMm) : at;
            double x = left + (r.XMm * scale), y = Top + high - (r.TopMm * scale), w = r.WidthMm * scale, h = r.HeightMm * scale;
            if (piece.BackUp)
                paper.Hatch(x, y, w, h, 45, 7, Pen.Faint);
            paper.Rect(x, y, w, h, Pen.Hair);
            Head(paper, x, y, w, h, (piece.QuarterTurns + (onItsSide ? 1 : 0)) % 4);
            if (w < 34 || h < 15)
                continue;
            paper.Blank(x + (w / 2) - 16, y + (h / 2) - 8, 32, 15);
            paper.Text(x + (w / 2), y + (h / 2) + 4, piece.BackUp ? "back" : "front", Lettering.Word, 11, "middle");
        }
    }

    // A small triangle at the picture's head.
    private static void Head(SvgPaper paper, double x, double y, double w, double h, int quarter)
    {
        double s = Math.Min(5, Math.Min(w, h) / 5), midX = x + (w / 2), midY = y + (h / 2);
        paper.Solid(quarter switch
        {
            1 => Invariant($"M{x + 1:0.##} {midY:0.##}l{s * 1.2:0.##} {-s:0.##}v{2 * s:0.##}Z"),
            2 => Invariant($"M{midX:0.##} {y + h - 1:0.##}l{-s:0.##} {-s * 1.2:0.##}h{2 * s:0.##}Z"),
            3 => Invariant($"M{x + w - 1:0.##} {midY:0.##}l{-s * 1.2:0.##} {-s:0.##}v{2 * s:0.##}Z"),
            _ => Invariant($"M{midX:0.##} {y + 1:0.##}l{-s:0.##} {s * 1.2:0.##}h{2 * s:0.##}Z"),
        }, accent: false);
    }

    // The two edges that were marked, wherever they lie now.
    private static void Edges(SvgPaper paper, double left, SizeMm lying, double scale, bool sideAtLeft, bool frontBelow)
    {
        double right = left + (lying.WidthMm * scale), low = Top + (lying.HeightMm * scale);
        double a = sideAtLeft ? left : right, b = frontBelow ? low : Top;
        paper.Line(a, Top, a, low, Pen.Accent);
        paper.Line(left, b, right, b, Pen.Accent);
        paper.Text(a + (sideAtLeft ? 11 : -11), Top + ((low - Top) * 0.35) + 5, "a", Lettering.Accent, 15, "middle");
        paper.Text(left + ((right - left) * 0.62), b + (frontBelow ? -7 : 16), "b", Lettering.Accent, 15, "middle");
    }

    // Pins of the front lay below, the side lay as a block beside the sheet.
    private static void Lays(SvgPaper paper, double left, SizeMm lying, double scale, bool farSide, string front)
    {
        double wide = lying.WidthMm * scale, low = Top + (lying.HeightMm * scale);
        paper.Line(left - 26, low + 8, left + wide + 26, low + 8, Pen.Hair);
        foreach (double share in (ReadOnlySpan<double>)[0.2, 0.8])
            paper.Solid(Invariant($"M{left + (share * wide) - 4:0.##} {low + 4.5:0.##}a4 4 0 1 0 8 0a4 4 0 1 0 -8 0Z"), accent: true);
        paper.Text(left + (wide / 2), low + 22, front, Lettering.Quiet, 11, "middle");
        double x = farSide ? left + wide + 1 : left - 11, y = low - Math.Min(64, (low - Top) / 2);
        paper.Solid(Invariant($"M{x:0.##} {y:0.##}h10v22h-10Z"), accent: true);
        paper.Text(farSide ? x + 14 : x - 4, y + 15, "side", Lettering.Quiet, 11, farSide ? "start" : "end");
        paper.Text(farSide ? x + 14 : x - 4, y + 27, "lay", Lettering.Quiet, 11, farSide ? "start" : "end");
        Sizing.Level(paper, left, left + wide, low + 46, Sizing.Length(lying.WidthMm), 11);
    }

    // An arrow from one face to the other, and the line about which the sheet is turned.
    private static void Turning(SvgPaper paper, SizeMm lying, double scale, bool side)
    {
        double from = First + (lying.WidthMm * scale) + 34, to = Second - 44, y = Top + 30;
        if (to - from > 14)
            Sizing.Arrow(paper, from, y, to, y, accent: true);
        paper.Text((from + to) / 2, y - 34, "turned", Lettering.Word, 12, "middle");
        paper.Text((from + to) / 2, y - 18, side ? "sideways" : "front to back", Lettering.Word, 12, "middle");
        double midX = First + (lying.WidthMm * scale / 2), midY = Top + (lying.HeightMm * scale / 2);
        if (side)
            paper.Line(midX, Top - 10, midX, Top + (lying.HeightMm * scale), Pen.Broken);
        else
            paper.Line(First - 10, midY, First + (lying.WidthMm * scale) + 10, midY, Pen.Broken);
    }

    private static string Describe(Run run, bool side, bool farSideLay) =>
        (side ? "Turned sideways: edge b lies at the front lay on both faces, edge a at the other side on the second. " : "Turned front to back: edge a lies at the same side on both faces, edge b away from the front lay on the second. ")
        + (side && farSideLay ? "The side lay stands at the far side on the second face. " : "")
        + (run.Sheets[0].Faces is { OneFile: true } ? "Fronts and backs lie on one sheet and come onto each other." : "All fronts lie on the first face, all backs on the second.");
}
