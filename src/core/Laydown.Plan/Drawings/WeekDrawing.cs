using Laydown.Measures;
using Laydown.Plan.Week;

namespace Laydown.Plan.Drawings;

/// <summary>Draws a week: a row for each press and, under them, for each place of a bench, time from left to right with shut hours left out, set-up hatched, late runs marked.</summary>
public static class WeekDrawing
{
    private const double Left = 12, Top = 52, RowHigh = 84, Bar = 40, BarTop = 14, NameRoom = 74;

    /// <summary>The week as a drawing.</summary>
    /// <param name="presses">The presses with their open spans.</param>
    /// <param name="names">Names of the presses for people, by id.</param>
    /// <param name="plan">What is on them.</param>
    /// <param name="days">Minutes at which a day begins, with its name.</param>
    /// <param name="held">Runs put by hand.</param>
    /// <param name="scale">How many times the usual width a minute gets; over 0.</param>
    /// <param name="benches">Benches of the work after the press; null for none.</param>
    /// <exception cref="ArgumentException">No press.</exception>
    public static WeekDrawn Draw(
        IReadOnlyList<WeekPress> presses, IReadOnlyDictionary<string, string> names, WeekPlan plan, IReadOnlyList<(int Minute, string Name)> days, IReadOnlySet<string> held, double scale = 1,
        IReadOnlyList<WeekBench>? benches = null)
    {
        Bounds.NotEmpty(presses);
        WeekAxis axis = WeekAxis.Of(presses, plan, scale);
        double bottom = Top + (RowHigh * presses.Count), high = WeekBenchRows.High(benches ?? []);
        SvgPaper paper = new(
            Left + axis.Width + 20, bottom + high + 34, benches is { Count: > 0 } ? "Runs on presses and at benches" : "Runs on presses", Describe(plan, names) + WeekBenchRows.Describe(benches ?? [], plan));
        Days(paper, axis, days, bottom + high);
        for (int row = 0; row < presses.Count; row++)
        {
            double y = Top + (RowHigh * row);
            paper.Text(Left, y + 2, names.GetValueOrDefault(presses[row].Id, presses[row].Id), Lettering.Figure, 12);
            foreach (WeekSpan open in presses[row].Open.Where(s => axis.X(s.End) - axis.X(s.Start) > 0))
                paper.Line(Left + axis.X(open.Start), y + Bar + 18, Left + axis.X(open.End), y + Bar + 18, Pen.Edge);
            foreach (WeekWindow window in (presses[row].Windows ?? []).Where(w => axis.X(w.End) - axis.X(w.Start) > 0))
                Window(paper, axis, window, y + BarTop);
            foreach (WeekBlock block in plan.Care.Where(b => b.PressId == presses[row].Id && axis.X(b.End) - axis.X(b.Start) > 0))
                Care(paper, Left + axis.X(block.Start), axis.X(block.End) - axis.X(block.Start), y + BarTop, Bar);
            foreach (WeekPlace place in plan.Places.Where(p => p.PressId == presses[row].Id))
                Run(paper, axis, place, y + BarTop, held.Contains(place.RunId));
        }

        WeekBenchRows.Draw(paper, axis, Left, bottom, benches ?? [], plan);
        Key(paper, bottom + high + 14, plan.Care.Count > 0);
        return new(paper.Done(), axis, Left, Top + BarTop, RowHigh, Bar);
    }

    private static void Key(SvgPaper paper, double key, bool care)
    {
        paper.Hatch(Left, key - 9, 18, 11, 45, 4);
        paper.Text(Left + 24, key, "set-up", Lettering.Figure, 11);
        paper.Solid(Mark(Left + 90, key - 9), true);
        paper.Text(Left + 104, key, "late", Lettering.Figure, 11);
        paper.Solid(Held(Left + 150, key - 4), false);
        paper.Text(Left + 172, key, "put by hand", Lettering.Figure, 11);
        paper.Dots(Left + 272, key - 10, 18, 13, 6);
        paper.Rect(Left + 272, key - 10, 18, 13, Pen.Broken);
        paper.Text(Left + 296, key, "maintenance", Lettering.Figure, 11);
        if (!care)
            return;
        Care(paper, Left + 392, 12, key - 10, 13);
        paper.Text(Left + 412, key, "care of the press", Lettering.Figure, 11);
    }

    // Narrow as it mostly is: a bar from edge to edge of the row, open at top and bottom, with dots close together.
    private static void Care(SvgPaper paper, double x, double wide, double y, double high)
    {
        paper.Dots(x, y + 2, Math.Max(1.5, wide), high - 4, 3);
        paper.Line(x, y - 3, x, y + high + 3, Pen.Hair);
        paper.Line(x + wide, y - 3, x + wide, y + high + 3, Pen.Hair);
    }

    private static void Days(SvgPaper paper, WeekAxis axis, IReadOnlyList<(int Minute, string Name)> days, double bottom)
    {
        List<(double X, string Name)> lines = [];
        foreach ((int i, (int minute, string name)) in days.Index())
        {
            // A day on which nothing is worked has no width: the name there is that of the next one worked.
            double x = Left + axis.X(minute);
            if ((lines.Count == 0 || x - lines[^1].X >= 1) && x <= Left + axis.Width - 1 && (i + 1 == days.Count || axis.X(days[i + 1].Minute) - axis.X(minute) >= 1))
                lines.Add((x, name));
        }

        double Wide(int i) => (i + 1 < lines.Count ? lines[i + 1].X : Left + axis.Width) - lines[i].X;
        double last = double.MinValue;
        for (int i = 0; i < lines.Count; i++)
        {
            paper.Line(lines[i].X, Top - 18, lines[i].X, bottom, Pen.Hair);

            // The rest of a day that is nearly over leaves its room to the name of the day after.
            bool gives = Wide(i) < NameRoom && i + 1 < lines.Count && Wide(i + 1) > 2 * Wide(i);
            if (gives || lines[i].X - last <= NameRoom)
                continue;
            paper.Text(lines[i].X + 4, Top - 24, lines[i].Name, Lettering.Figure, 11);
            last = lines[i].X;
        }
    }

    private static void Run(SvgPaper paper, WeekAxis axis, WeekPlace place, double y, bool held)
    {
        double setUp = Left + axis.X(place.SetUpStart), start = Left + axis.X(place.Start), end = Math.Max(Left + axis.X(place.End), start + 1.5);
        if (start - setUp > 0.5)
        {
            paper.Hatch(setUp, y, start - setUp, Bar, 45, 4);
            paper.Rect(setUp, y, start - setUp, Bar, Pen.Hair);
        }

        double room = Printing(paper, axis, place, start, end, y);
        if (place.Late > 0)
            paper.Solid(Mark(start + 1, y - 7), true);
        if (held)
            paper.Solid(Held(start, y + Bar), false);
        if (room > 88)
            paper.Text(start + 5, y + 17, Short(place.RunId), Lettering.Figure, 12);
        if (room > 88 && place.Late > 0)
            paper.Text(start + 5, y + 33, "late " + WeekReasons.Words(place.Late), Lettering.Figure, 10.5);
        else if (room <= 88)
            paper.Text(start, y + Bar + 13, Tail(place.RunId), Lettering.Figure, 10);
    }

    // Where the press stands shut or looked after meanwhile, a line joins the parts. Gives the width of the first one.
    private static double Printing(SvgPaper paper, WeekAxis axis, WeekPlace place, double start, double end, double y)
    {
        WeekSpan[] parts = [.. place.Parts.Select(p => p with { Start = Math.Max(p.Start, place.Start) }).Where(p => p.End > p.Start)];
        if (parts.Length < 2)
        {
            paper.Rect(start, y, end - start, Bar, Pen.Edge, onPaper: true);
            return end - start;
        }

        paper.Line(start, y + (Bar / 2), end, y + (Bar / 2), Pen.Edge);
        foreach (WeekSpan part in parts)
            paper.Rect(Left + axis.X(part.Start), y, Math.Max(1.5, axis.X(part.End) - axis.X(part.Start)), Bar, Pen.Edge, onPaper: true);
        return axis.X(parts[0].End) - axis.X(parts[0].Start);
    }

    private static void Window(SvgPaper paper, WeekAxis axis, WeekWindow window, double y)
    {
        double start = Left + axis.X(window.Start), wide = Left + axis.X(window.End) - start;
        paper.Dots(start, y, wide, Bar, 6);
        paper.Rect(start, y, wide, Bar, Pen.Broken);
        if (wide > (window.What.Length * 6.2) + 8)
        {
            paper.Blank(start + 3, y + 10, (window.What.Length * 6.2) + 6, 18);
            paper.Text(start + 6, y + 23, window.What, Lettering.Word, 11);
        }
    }

    internal static string Mark(double x, double y) => Invariant($"M{x:0.##} {y:0.##}h10l-5 8z");

    private static string Held(double x, double y) => Invariant($"M{x:0.##} {y - 2:0.##}h16v4h-16z");

    internal static string Short(string runId) => runId.Length > 11 ? runId[^11..] : runId;

    internal static string Tail(string runId) => runId.Contains('-', StringComparison.Ordinal) ? runId[(runId.LastIndexOf('-') + 1)..] : runId;

    private static string Describe(WeekPlan plan, IReadOnlyDictionary<string, string> names) => string.Join(" ", plan.Places.GroupBy(p => p.PressId).Select(g =>
        Invariant($"On {names.GetValueOrDefault(g.Key, g.Key)}: {string.Join(", ", g.Select(p => p.RunId + (p.Late > 0 ? " (late)" : "")))}.")));
}
