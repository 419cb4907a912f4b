using Laydown.Plan.Week;

namespace Laydown.Plan.Drawings;

/// <summary>Minutes at which any press is worked, laid end to end from left to right.</summary>
/// <param name="Open">Spans shown, sorted, apart.</param>
/// <param name="PxPerMinute">Width of a minute, px.</param>
public sealed record WeekAxis(IReadOnlyList<WeekSpan> Open, double PxPerMinute)
{
    private const double Least = 640, Most = 4000, Readable = 76;

    /// <summary>Width of all spans, px.</summary>
    public double Width => (Open.Sum(s => s.End - s.Start) * PxPerMinute) + 1;

    /// <summary>Where a minute lies, px from the start of the axis; a minute between two spans lies where they meet.</summary>
    public double X(int minute) => Open.Sum(s => Math.Clamp(minute - s.Start, 0, s.End - s.Start)) * PxPerMinute;

    /// <summary>The axis of a plan: to the end of its last run or step at a bench, and one span more so that runs can be put later; half of the bars are wide enough for their names where that needs no wall of paper.</summary>
    /// <param name="presses">The presses with their open spans.</param>
    /// <param name="plan">What is on them.</param>
    /// <param name="scale">How many times the usual width a minute gets; over 0.</param>
    public static WeekAxis Of(IReadOnlyList<WeekPress> presses, WeekPlan plan, double scale = 1)
    {
        int last = plan.Places.Select(p => p.End).Concat(plan.Visits.Select(v => v.End)).DefaultIfEmpty(60).Max();
        IEnumerable<WeekSpan> atBenches = plan.Visits.SelectMany(v => v.Parts).Where(s => s.End > 0).Select(s => s with { Start = Math.Max(0, s.Start) });
        List<WeekSpan> open = [];
        foreach (WeekSpan span in presses.SelectMany(p => p.Open.Concat((p.Windows ?? []).Select(w => new WeekSpan(w.Start, w.End)))).Concat(plan.Places.SelectMany(p => p.Parts)).Concat(atBenches).OrderBy(s => s.Start))
        {
            if (open.Count > 0 && span.Start <= open[^1].End)
                open[^1] = open[^1] with { End = Math.Max(open[^1].End, span.End) };
            else if (open.Count > 0 && open[^1].Start >= last)
                break;
            else
                open.Add(span);
        }

        // Where time is open without end there is a day of it.
        if (open.Count > 0)
            open[^1] = open[^1] with { End = Math.Min(open[^1].End, Math.Max(open[^1].Start, last) + 1440) };
        double minutes = Math.Max(1, open.Sum(s => s.End - s.Start));
        int[] worked = [.. plan.Places.Select(p => p.Parts.Sum(s => s.End - s.Start)).Order()];
        double readable = worked.Length == 0 ? 0 : Readable / Math.Max(1, worked[worked.Length / 2]);
        return new(open, scale * Math.Clamp(Math.Max(Least / minutes, readable), Math.Min(0.7, Most / minutes), Math.Min(4, Most / minutes)));
    }
}
