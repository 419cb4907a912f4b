using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Press.Machines;

namespace Laydown.Plan.Drawings;

/// <summary>Draws the belt from above to scale: zones open and shut, lays, lanes, sheets and their sizes.</summary>
public static class BeltDrawing
{
    private const double Width = 760, Left = 56, BeltPx = 648, Top = 74, MostLengthPx = 400;

    /// <summary>The belt as SVG text, 760 units wide; across the belt to the right, feed upward.</summary>
    /// <param name="press">The press.</param>
    /// <param name="place">How sheets lie on it.</param>
    /// <param name="sheets">Layouts: the first is drawn in each lane; of two rolls each in its own, of different blanks the first of each in its lanes; none for bare sheets.</param>
    /// <exception cref="ArgumentNullException">Press or place is null.</exception>
    public static string Draw(PressDescription press, BeltPlace place, params IReadOnlyList<SheetLayout> sheets)
    {
        ArgumentNullException.ThrowIfNull(press);
        ArgumentNullException.ThrowIfNull(sheets);
        ArgumentNullException.ThrowIfNull(place);
        double scale = BeltPx / place.BeltWidthMm;
        bool cut = place.FeedMm * scale > MostLengthPx - 30;
        double lengthPx = cut ? MostLengthPx - 40 : place.FeedMm * scale;
        double front = Top + lengthPx + 34;
        SvgPaper paper = new(Width, front + 130, Invariant($"Belt of {press.Name}"), Describe(place));

        Zones(paper, press, place, scale, front);
        foreach (Lane lane in place.Lanes)
            LaneSheets(paper, place, lane, SheetOf(place, lane, sheets), scale, front, lengthPx);
        Lays(paper, press, place, scale, front);
        Sizes(paper, place, scale, front, lengthPx, cut);
        double barEnd = Sizing.Bar(paper, Left, front + 86, scale);
        paper.Text(barEnd + 44, front + 96, press.Invented ? "to scale · press invented for the demo" : "to scale", Lettering.Quiet, 11);
        // On a line of its own: on a narrow belt the scale bar is long and leaves no room beside it.
        paper.Text(Width - 8, front + 118, Invariant($"open under no sheet: {Sizing.Length(place.UncoveredMm)} of belt width"), Lettering.Word, 12, "end");
        return paper.Done();
    }

    private static void Zones(SvgPaper paper, PressDescription press, BeltPlace place, double scale, double front)
    {
        paper.Blank(Left, Top, BeltPx, front - Top);
        foreach (VacuumZone zone in press.Zones)
        {
            double x = Left + (zone.StartMm * scale), w = zone.WidthMm * scale;
            bool open = place.OpenZones.Contains(zone.Id, StringComparer.Ordinal);
            if (open)
                paper.Dots(x, Top, w, front - Top, 11);
            else
                paper.Hatch(x, Top, w, front - Top, 45, 9, Pen.Faint);

            paper.Rect(x, Top, w, front - Top, Pen.Hair);
            paper.Text(x + (w / 2), Top - 24, zone.Id, Lettering.Name, 15, "middle");
            paper.Text(x + (w / 2), Top - 8, open ? "open" : "shut", open ? Lettering.Accent : Lettering.Quiet, 12, "middle");
        }

        paper.Rect(Left, Top, BeltPx, front - Top, Pen.Edge);
        paper.Text(Left, 16, "vacuum zones", Lettering.Quiet, 11);
        Sizing.Arrow(paper, Width - 28, front - 10, Width - 28, Top + 10);
        paper.Text(Width - 12, (front + Top) / 2, "feed", Lettering.Word, 12, "middle", -90);
    }

    private static void LaneSheets(
        SvgPaper paper, BeltPlace place, Lane lane, SheetLayout? sheet, double scale, double front, double mostPx)
    {
        double ownPx = (lane.FeedMm ?? place.FeedMm) * scale, lengthPx = Math.Min(ownPx, mostPx);
        double x = Left + (lane.StartMm * scale), w = lane.WidthMm * scale, y = front - lengthPx;
        paper.Rect(x, y, w, lengthPx, Pen.Edge, onPaper: true);
        if (sheet is not null)
            Pieces(paper, lane.Turned ?? place.Turned, sheet, x, front, scale, y);
        if (ownPx > lengthPx + 1)
            Break(paper, x, y + 46, w);

        // The sheet that follows, as a ghost.
        if (lane.Blanks > 1)
            paper.Path(Invariant($"M{x:0.##} {y - 8:0.##}V{Math.Max(Top + 4, y - 26):0.##}M{x + w:0.##} {y - 8:0.##}V{Math.Max(Top + 4, y - 26):0.##}M{x:0.##} {y - 8:0.##}h{w:0.##}"), Pen.Broken);

        double label = Math.Min(w - 8, place.Lanes.Count > 1 ? 92 : 78);
        bool tells = place.Lanes.Count > 1 && lane.Loaded > 0 && !IsRoll(place);
        paper.Blank(x + ((w - label) / 2), front - (tells ? 41 : 27), label, tells ? 34 : 20);
        if (tells)
            paper.Text(x + (w / 2), front - 27, Invariant($"load {Ordinal(lane.Loaded)}"), Lettering.Quiet, 11, "middle");
        string words = IsRoll(place) ? place.Lanes.Count > 1 ? Invariant($"roll {lane.Number}") : "roll" : place.Lanes.Count > 1 ? Invariant($"lane {lane.Number}: {lane.Blanks}") : Invariant($"{lane.Blanks} {(lane.Blanks == 1 ? "sheet" : "sheets")}");
        paper.Text(x + (w / 2), front - 12, words, Lettering.Name, 13, "middle");
    }

    // Two rolls have a sheet each, in the order of their lanes; different blanks are told by their stock.
    private static SheetLayout? SheetOf(BeltPlace place, Lane lane, IReadOnlyList<SheetLayout> sheets) =>
        IsRoll(place) && place.Lanes.Count > 1 ? sheets.ElementAtOrDefault(lane.Number - 1)
        : sheets.FirstOrDefault(s => lane.BlankId is null || string.Equals(s.StockId, lane.BlankId, StringComparison.Ordinal)) ?? (sheets.Count > 0 ? sheets[0] : null);

    private static string Ordinal(int number) => number switch { 1 => "first", 2 => "second", 3 => "third", 4 => "fourth", _ => Invariant($"{number}th") };

    private static void Pieces(SvgPaper paper, bool turned, SheetLayout sheet, double x, double front, double scale, double top)
    {
        foreach (Placement placement in sheet.Placements)
        {
            RectMm r = turned
                ? new(sheet.Sheet.HeightMm - placement.Place.TopMm, placement.Place.XMm, placement.Place.HeightMm, placement.Place.WidthMm)
                : placement.Place;
            double y = Math.Max(top, front - (r.TopMm * scale));
            double h = front - (r.YMm * scale) - y;
            if (h > 0.5)
                paper.Rect(x + (r.XMm * scale), y, r.WidthMm * scale, h, Pen.Hair);
        }
    }

    // Two wavy lines: the sheet goes on, but not in the drawing.
    private static void Break(SvgPaper paper, double x, double y, double w)
    {
        paper.Blank(x - 2, y, w + 4, 8);
        foreach (double at in (ReadOnlySpan<double>)[y, y + 8])
            paper.Path(Invariant($"M{x - 6:0.##} {at:0.##}q{w / 4:0.##} -9 {(w + 12) / 2:0.##} 0t{(w + 12) / 2:0.##} 0"), Pen.Hair);
    }

    private static void Lays(SvgPaper paper, PressDescription press, BeltPlace place, double scale, double front)
    {
        paper.Line(Left, front, Left + BeltPx, front, Pen.Edge);
        foreach (double lay in press.Lays)
            paper.Line(Left + (lay * scale), front + 2, Left + (lay * scale), front + 8, Pen.Hair);

        bool pins = !IsRoll(place);
        if (pins)
            foreach (double pin in press.FrontPins ?? [])
                paper.Line(Left + (pin * scale), front - 3, Left + (pin * scale), front + 3, Pen.Faint);
        foreach (Lane lane in place.Lanes)
        {
            double x = Left + (lane.StartMm * scale), w = lane.WidthMm * scale;
            paper.Solid(Invariant($"M{x:0.##} {front + 1:0.##}l-5 10h10Z"), accent: true);
            if (pins)
                foreach (double at in Pins(press, lane).Select(p => Left + (p * scale)))
                    paper.Solid(Invariant($"M{at - 3:0.##} {front + 3:0.##}a3 3 0 1 0 6 0a3 3 0 1 0 -6 0Z"), accent: true);
        }

        paper.Text(Left - 8, front + 10, pins ? "front lay" : "no lay", Lettering.Quiet, 10, "end");
        paper.Text(Left, front + 22, "0", Lettering.Figure, 11, "middle");
    }

    // The outer two pins that stand clear of the sheet's sides; where pins stand anywhere, at a seventh of its width.
    private static IReadOnlyList<double> Pins(PressDescription press, Lane lane)
    {
        if (press.FrontPins is not { } pins)
            return [lane.StartMm + (lane.WidthMm * 0.15), lane.StartMm + (lane.WidthMm * 0.85)];
        IReadOnlyList<double> before = [.. pins.Where(p => p >= lane.StartMm + 10 && p <= lane.StartMm + lane.WidthMm - 10)];
        return before.Count == 0 ? [] : [before[0], before[^1]];
    }

    private static void Sizes(SvgPaper paper, BeltPlace place, double scale, double front, double lengthPx, bool cut)
    {
        double y = front + 38;
        double before = 0;
        foreach (Lane lane in place.Lanes)
        {
            double x1 = Left + (lane.StartMm * scale), x2 = x1 + (lane.WidthMm * scale);
            if (lane.StartMm - before > 0.5)
                Sizing.Level(paper, Left + (before * scale), x1, y, x1 - Left - (before * scale) < 52 ? "" : Invariant($"{lane.StartMm - before:0.#}"), 11);
            Sizing.Level(paper, x1, x2, y, Invariant($"{lane.WidthMm:0.#}"), 11);
            paper.Text(x1, y + 15, Invariant($"at {lane.StartMm:0.#}"), Lettering.Accent, 11, lane.StartMm * scale < 20 ? "start" : "middle");
            before = lane.StartMm + lane.WidthMm;
        }

        Sizing.Level(paper, Left, Left + BeltPx, front + 72, Invariant($"belt {Sizing.Length(place.BeltWidthMm)}"), 11);
        Sizing.Upright(paper, Left - 16, front - lengthPx, front, Invariant($"{Sizing.Length(place.FeedMm)}{(cut ? ", cut short here" : "")}"), 11);
    }

    private static bool IsRoll(BeltPlace place) => string.Equals(place.FrontLay, "none", StringComparison.Ordinal);

    private static string Describe(BeltPlace place) =>
        Invariant($"Seen from above, feed upward. Open zones: {Listed(place.OpenZones)}; shut: {Listed(place.ShutZones)}. ")
        + string.Join(' ', place.Lanes.Select(l => Invariant($"Lane {l.Number} starts {l.StartMm:0.#} mm from the origin, is {l.WidthMm:0.#} mm wide and takes {l.Blanks}{(l.BlankId is null ? "" : " of " + l.BlankId)}.")))
        + Invariant($" Each sheet takes {place.AcrossMm:0.#} mm across and {place.FeedMm:0.#} mm along the feed{(place.Turned ? ", turned" : "")}.");

    private static string Listed(IReadOnlyList<string> ids) => ids.Count == 0 ? "none" : string.Join(", ", ids);
}
