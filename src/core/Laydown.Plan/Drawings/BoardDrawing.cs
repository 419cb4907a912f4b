using Laydown.Layout.Marks;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Drawings;

/// <summary>Draws one sheet to scale: pieces with names and sizes, offcuts, margins, flute or grain direction.</summary>
public static class BoardDrawing
{
    private const double Width = 760, Left = 46, Top = 46, MostWide = 690, MostHigh = 470;

    /// <summary>The sheet as SVG text, 760 units wide. A sheet much longer than wide is drawn lying, its upper end to the right, and says so.</summary>
    /// <param name="sheet">The layout.</param>
    /// <param name="names">Names of pieces by id, for people; a piece without one is shown by its id.</param>
    /// <param name="grain">Direction of flutes or grain of the stock.</param>
    /// <param name="marks">Printed marks; null for none.</param>
    /// <exception cref="ArgumentNullException">Sheet or names is null.</exception>
    public static string Draw(
        SheetLayout sheet, IReadOnlyDictionary<string, string> names, GrainDirection grain = GrainDirection.None, IReadOnlyList<SheetMark>? marks = null)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(names);
        SheetView view = SheetView.Of(sheet.Sheet, Left, Top, MostWide, MostHigh);
        SvgPaper paper = new(Width, Top + view.HeightPx + 62, Invariant($"Sheet {sheet.Sheet}"), Describe(sheet, names));

        paper.Rect(Left, Top, view.WidthPx, view.HeightPx, Pen.Edge, onPaper: true);
        (double X, double Y, double W, double H) inner = view.Of(new RectMm(0, 0, sheet.Sheet.WidthMm, sheet.Sheet.HeightMm).Grown(-sheet.EdgeMarginMm));
        if (sheet.EdgeMarginMm > 0)
            paper.Rect(inner.X, inner.Y, inner.W, inner.H, Pen.Broken);
        foreach (RectMm offcut in sheet.Offcuts)
            Offcut(paper, view, offcut);
        foreach (Placement placement in sheet.Placements)
            Piece(paper, view, placement, sheet.OutlineOf(placement.PieceId), names);

        MarksDrawing.Draw(paper, view, marks ?? []);
        Edges(paper, view, sheet);
        Grain(paper, view, grain);
        double barEnd = Sizing.Bar(paper, Left, Top + view.HeightPx + 28, view.PxPerMm);
        paper.Text(barEnd + 44, Top + view.HeightPx + 38, Caption(sheet), Lettering.Quiet, 11);
        if (view.Turned)
            paper.Text(barEnd + 44, Top + view.HeightPx + 53, "drawn lying, its top to the right", Lettering.Quiet, 11);
        return paper.Done();
    }

    private static void Offcut(SvgPaper paper, SheetView view, RectMm offcut)
    {
        (double x, double y, double w, double h) = view.Of(offcut);
        paper.Hatch(x, y, w, h, 135, 12, Pen.Faint);
        paper.Rect(x, y, w, h, Pen.Faint);
        string size = Size(view.Turned ? offcut.Size.Turned() : offcut.Size);
        double wide = (size.Length * 7) + 10;
        if (w > wide && h > 34)
        {
            paper.Blank(x + ((w - wide) / 2), y + (h / 2) - 17, wide, 34);
            paper.Text(x + (w / 2), y + (h / 2) - 3, "offcut", Lettering.Quiet, 11, "middle");
            paper.Text(x + (w / 2), y + (h / 2) + 12, size, Lettering.Figure, 11, "middle");
        }
    }

    private static void Piece(SvgPaper paper, SheetView view, Placement placement, PieceOutline? outline, IReadOnlyDictionary<string, string> names)
    {
        if (outline is not null)
        {
            Contour(paper, view, outline.On(placement), placement.Copy);
            return;
        }

        (double x, double y, double w, double h) = view.Of(placement.Place);
        paper.Rect(x, y, w, h, Pen.Edge, onPaper: true);
        Upright(paper, x, y, w, h, view.UpOf(placement.QuarterTurns));

        // Names go level where they fit, else upright, else only the number of the copy.
        string name = (placement.BackUp ? "back: " : "") + (names.TryGetValue(placement.PieceId, out string? found) ? found : placement.PieceId);
        string size = Size(view.Turned ? placement.Place.Size.Turned() : placement.Place.Size);
        double least = Math.Max(Math.Min(name.Length, 14) * 7.2, size.Length * 6.9) + 8;
        if (w >= least && h >= 36)
            Words(paper, x + (w / 2), y + (h / 2), w, name, size, placement.Copy, level: true);
        else if (h >= least && w >= 36)
            Words(paper, x + (w / 2), y + (h / 2), h, name, size, placement.Copy, level: false);
        else if (Math.Min(w, h) >= 13)
            paper.Text(x + (w / 2), y + (h / 2) + 4, Invariant($"{placement.Copy}"), Lettering.Figure, Math.Min(11, Math.Min(w, h) * 0.6), "middle");
    }

    // Rectangles around contours lie over each other, so a contour carries only the number of its copy, where it is widest.
    private static void Contour(SvgPaper paper, SheetView view, IReadOnlyList<IReadOnlyList<PointMm>> rings, int copy)
    {
        paper.Path(string.Concat(rings.Select(view.Ring)), Pen.Edge, onPaper: true);
        RectMm inside = SheetView.Widest(rings);
        (double x, double y, double w, double h) = view.Of(inside);
        if (Math.Max(w, h) >= 12)
            paper.Text(x + (w / 2), y + (h / 2) + 4, Invariant($"{copy}"), Lettering.Figure, 11, "middle");
    }

    private static void Words(SvgPaper paper, double x, double y, double room, string name, string size, int copy, bool level)
    {
        string copyText = Invariant($" · {copy}");
        int fits = (int)((room - 8) / 7.2) - copyText.Length;
        string line = (name.Length <= fits ? name : name[..Math.Max(1, fits - 1)].TrimEnd() + "…") + copyText;
        (double dx, double dy) = level ? (0, 1) : (1, 0);
        double turn = level ? 0 : -90;
        paper.Text(x - (2 * dx), y - (2 * dy), line, Lettering.Name, 12, "middle", turn);
        paper.Text(x + (13 * dx), y + (13 * dy), size, Lettering.Figure, 11, "middle", turn);
    }

    // A small triangle at the picture's upper edge: which way is up can be seen without words.
    private static void Upright(SvgPaper paper, double x, double y, double w, double h, (int X, int Y) up)
    {
        double s = Math.Min(5, Math.Min(w, h) / 5);
        double cx = x + (w / 2) + (up.X * ((w / 2) - 1)), cy = y + (h / 2) + (up.Y * ((h / 2) - 1));
        paper.Solid(up.X == 0
            ? Invariant($"M{cx:0.##} {cy:0.##}l{-s:0.##} {-up.Y * s * 1.2:0.##}h{2 * s:0.##}Z")
            : Invariant($"M{cx:0.##} {cy:0.##}l{-up.X * s * 1.2:0.##} {-s:0.##}v{2 * s:0.##}Z"), accent: false);
    }

    private static void Edges(SvgPaper paper, SheetView view, SheetLayout sheet)
    {
        SizeMm drawn = view.Turned ? sheet.Sheet.Turned() : sheet.Sheet;
        Sizing.Level(paper, Left, Left + view.WidthPx, Top - 16, Sizing.Length(drawn.WidthMm));
        Sizing.Upright(paper, Left - 18, Top, Top + view.HeightPx, Sizing.Length(drawn.HeightMm));
        (double X, double Y) origin = view.Origin;
        paper.Solid(Invariant($"M{origin.X - 4:0.##} {origin.Y:0.##}a4 4 0 1 0 8 0a4 4 0 1 0 -8 0Z"), accent: true);
    }

    private static void Grain(SvgPaper paper, SheetView view, GrainDirection grain)
    {
        if (grain is GrainDirection.None)
            return;

        bool level = (grain is GrainDirection.AlongWidth) != view.Turned;
        double x = Width - 118, y = Top + view.HeightPx + 34;
        foreach (double at in (ReadOnlySpan<double>)[-6, 0, 6])
            if (level)
                paper.Line(x - 24, y + at, x + 24, y + at, at == 0 ? Pen.Accent : Pen.Hair);
            else
                paper.Line(x + at, y - 14, x + at, y + 14, at == 0 ? Pen.Accent : Pen.Hair);
        paper.Text(x + 32, y + 4, "flutes, grain", Lettering.Accent, 11);
    }

    private static string Caption(SheetLayout sheet) =>
        Invariant($"to scale · {(sheet.Repeats > 1 ? Invariant($"printed {sheet.Repeats} times · ") : "")}{sheet.FillPercent:0} % filled · dot: sheet's origin");

    private static string Size(SizeMm size) => Invariant($"{size.WidthMm:0.#} × {size.HeightMm:0.#}");

    private static string Describe(SheetLayout sheet, IReadOnlyDictionary<string, string> names) =>
        Invariant($"Sheet {sheet.Sheet}, printed {sheet.Repeats} times, margin {sheet.EdgeMarginMm:0.#} mm. ")
        + string.Join("; ", sheet.Placements.GroupBy(p => p.PieceId, StringComparer.Ordinal).Take(40).Select(g =>
            Invariant($"{g.Count()} of {(names.TryGetValue(g.Key, out string? n) ? n : g.Key)}, {Size(g.First().Place.Size)} mm")))
        + Invariant($". Offcuts: {(sheet.Offcuts.Count == 0 ? "none" : string.Join(", ", sheet.Offcuts.Select(o => o.Size)))}.");
}
