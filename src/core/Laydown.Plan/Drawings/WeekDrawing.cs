using Laydown.Measures;
using Laydown.Plan.Week;

namespace Laydown.Plan.Drawings;

/// <summary>Draws a week: a row for each press, time from left to right with shut hours left out, set-up hatched, late runs marked.</summary>
public static class WeekDrawing
{
    private const double Left = 12, Top = 52, RowHigh = 84, Bar = 40, Least = 640, Most = 4000;

    /// <summary>The week as SVG text.</summary>
    /// <param name="presses">The presses with their open spans.</param>
    /// <param name="names">Names of the presses for people, by id.</param>
    /// <param name="plan">What is on them.</param>
    /// <param name="days">Minutes at which a day begins, with its name.</param>
    /// <exception cref="ArgumentException">No press.</exception>
    public static string Draw(IReadOnlyList<WeekPress> presses, IReadOnlyDictionary<string, string> names, WeekPlan plan, IReadOnlyList<(int Minute, string Name)> days)
    {
        Bounds.NotEmpty(presses);
        Axis axis = Axis.Of(presses, plan);
        SvgPaper paper = new(Left + axis.Width + 20, Top + (RowHigh * presses.Count) + 34, "Runs on presses", Describe(plan, names));
        Days(paper, axis, days, presses.Count);
        for (int row = 0; row < presses.Count; row++)
        {
            double y = Top + (RowHigh * row);
            paper.Text(Left, y + 2, names.GetValueOrDefault(presses[row].Id, presses[row].Id), Lettering.Figure, 12);
            paper.Line(Left, y + Bar + 18, Left + axis.Width, y + Bar + 18, Pen.Faint);
            foreach (WeekPlace place in plan.Places.Where(p => p.PressId == presses[row].Id))
                Run(paper, axis, place, y + 14);
        }

        double key = Top + (RowHigh * presses.Count) + 14;
        paper.Hatch(Left, key - 9, 18, 11, 45, 4);
        paper.Text(Left + 24, key, "set-up", Lettering.Figure, 11);
        paper.Solid(Mark(Left + 90, key - 9), true);
        paper.Text(Left + 104, key, "late", Lettering.Figure, 11);
        return paper.Done();
    }

    private static void Days(SvgPaper paper, Axis axis, IReadOnlyList<(int Minute, string Name)> days, int rows)
    {
        double last = double.MinValue;
        foreach ((int minute, string name) in days)
        {
            double x = Left + axis.X(minute);
            if (x - last < 1 || x > Left + axis.Width - 1)
                continue;
            paper.Line(x, Top - 18, x, Top + (RowHigh * rows), Pen.Hair);
            if (x - last > 74)
                paper.Text(x + 4, Top - 24, name, Lettering.Figure, 11);
            last = x;
        }
    }

    private static void Run(SvgPaper paper, Axis axis, WeekPlace place, double y)
    {
        double setUp = Left + axis.X(place.SetUpStart), start = Left + axis.X(place.Start), end = Math.Max(Left + axis.X(place.End), start + 1.5);
        if (start - setUp > 0.5)
        {
            paper.Hatch(setUp, y, start - setUp, Bar, 45, 4);
            paper.Rect(setUp, y, start - setUp, Bar, Pen.Hair);
        }

        paper.Rect(start, y, end - start, Bar, Pen.Edge, onPaper: true);
        if (place.Late > 0)
            paper.Solid(Mark(start + 1, y - 7), true);
        if (end - start > 62)
            paper.Text(start + 5, y + 17, Short(place.RunId), Lettering.Figure, 12);
        if (end - start > 62 && place.Late > 0)
            paper.Text(start + 5, y + 33, "late " + WeekReasons.Words(place.Late), Lettering.Figure, 10.5);
        else if (end - start <= 62)
            paper.Text(start, y + Bar + 13, Tail(place.RunId), Lettering.Figure, 10);
    }

    private static string Mark(double x, double y) => Invariant($"M{x:0.##} {y:0.##}h10l-5 8z");

    private static string Short(string runId) => runId.Length > 11 ? runId[^11..] : runId;

    private static string Tail(string runId) => runId.Contains('-', StringComparison.Ordinal) ? runId[(runId.LastIndexOf('-') + 1)..] : runId;

    private static string Describe(WeekPlan plan, IReadOnlyDictionary<string, string> names) => string.Join(" ", plan.Places.GroupBy(p => p.PressId).Select(g =>
        Invariant($"On {names.GetValueOrDefault(g.Key, g.Key)}: {string.Join(", ", g.Select(p => p.RunId + (p.Late > 0 ? " (late)" : "")))}.")));

    /// <summary>Minutes at which any press is worked, laid end to end.</summary>
    private sealed record Axis(IReadOnlyList<WeekSpan> Open, double PxPerMinute)
    {
        public double Width => (Open.Sum(s => s.End - s.Start) * PxPerMinute) + 1;

        public static Axis Of(IReadOnlyList<WeekPress> presses, WeekPlan plan)
        {
            int last = plan.Places.Select(p => p.End).DefaultIfEmpty(60).Max();
            List<WeekSpan> open = [];
            foreach (WeekSpan span in presses.SelectMany(p => p.Open).Concat(plan.Places.SelectMany(p => p.Parts)).Where(s => s.Start < last).OrderBy(s => s.Start))
            {
                WeekSpan cut = span with { End = Math.Min(span.End, last) };
                if (open.Count > 0 && cut.Start <= open[^1].End)
                    open[^1] = open[^1] with { End = Math.Max(open[^1].End, cut.End) };
                else
                    open.Add(cut);
            }

            double minutes = Math.Max(1, open.Sum(s => s.End - s.Start));
            return new(open, Math.Clamp(Least / minutes, Math.Min(0.7, Most / minutes), Math.Min(4, Most / minutes)));
        }

        public double X(int minute) => Open.Sum(s => Math.Clamp(minute - s.Start, 0, s.End - s.Start)) * PxPerMinute;
    }
}
