using Laydown.Plan.Week;

namespace Laydown.Plan.Drawings;

/// <summary>The benches of a week under its presses: a thin row for each place, the runs at it as bars, a line under them while it is worked.</summary>
internal static class WeekBenchRows
{
    private const double NameHigh = 22, RowHigh = 32, Bar = 20, Gap = 8;

    /// <summary>Height of all rows, px.</summary>
    public static double High(IReadOnlyList<WeekBench> benches) => benches.Sum(b => NameHigh + (RowHigh * b.Places.Count) + Gap);

    /// <summary>Draws them.</summary>
    public static void Draw(SvgPaper paper, WeekAxis axis, double left, double top, IReadOnlyList<WeekBench> benches, WeekPlan plan)
    {
        HashSet<string> late = [.. plan.Places.Where(p => p.Late > 0).Select(p => p.RunId), .. plan.Printed.Where(p => p.Late > 0).Select(p => p.RunId)];
        foreach (WeekBench bench in benches)
        {
            string places = bench.Places.Count == 1 ? "" : Invariant($", {bench.Places.Count} places");
            paper.Text(left, top + 14, bench.Called + places, Lettering.Figure, 12);
            for (int place = 0; place < bench.Places.Count; place++)
            {
                double y = top + NameHigh + (RowHigh * place);
                foreach (WeekSpan open in bench.Places[place].Where(s => s.End > 0 && axis.X(s.End) - axis.X(s.Start) > 0))
                    paper.Line(left + axis.X(open.Start), y + Bar + 4, left + axis.X(open.End), y + Bar + 4, Pen.Edge);
                foreach (WeekVisit visit in plan.Visits.Where(v => v.BenchId == bench.Id && v.Place == place && v.End > 0))
                    Visit(paper, axis, left, y, visit, late.Contains(visit.RunId));
            }

            top += NameHigh + (RowHigh * bench.Places.Count) + Gap;
        }
    }

    /// <summary>What is at them, in words.</summary>
    public static string Describe(IReadOnlyList<WeekBench> benches, WeekPlan plan) => string.Concat(benches.Select(b =>
        Invariant($" At {b.Called}: {string.Join(", ", plan.Visits.Where(v => v.BenchId == b.Id && v.End > 0).Select(v => v.RunId).Distinct(StringComparer.Ordinal).DefaultIfEmpty("nothing"))}.")));

    private static void Visit(SvgPaper paper, WeekAxis axis, double left, double y, WeekVisit visit, bool late)
    {
        double start = left + axis.X(visit.Start), end = Math.Max(left + axis.X(visit.End), start + 1.5);
        if (visit.Parts.Count > 1)
            paper.Line(start, y + (Bar / 2), end, y + (Bar / 2), Pen.Edge);
        foreach (WeekSpan part in visit.Parts.Where(p => p.End > 0))
            paper.Rect(left + axis.X(part.Start), y, Math.Max(1.5, axis.X(part.End) - axis.X(part.Start)), Bar, Pen.Edge, onPaper: true);
        double room = visit.Parts.Count == 0 ? 0 : axis.X(visit.Parts[0].End) - axis.X(visit.Parts[0].Start);
        if (late)
            paper.Solid(WeekDrawing.Mark(start + 1, y - 7), true);
        if (room > 88)
            paper.Text(start + 5, y + 14, WeekDrawing.Short(visit.RunId), Lettering.Figure, 11);
        else if (room > (7 * WeekDrawing.Tail(visit.RunId).Length) + 6)
            paper.Text(start + 4, y + 14, WeekDrawing.Tail(visit.RunId), Lettering.Figure, 10);
    }
}
