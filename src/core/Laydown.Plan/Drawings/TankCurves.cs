using System.Globalization;
using System.Text;
using Laydown.Measures;
using Laydown.Plan.Calendar;
using Laydown.Plan.Runs;
using Laydown.Plan.Upkeep;

namespace Laydown.Plan.Drawings;

/// <summary>Draws the level of every tank along the plan, one strip below the other on one line of time: top-ups as numbered marks, closed hours hatched, runs as bars below.</summary>
public static class TankCurves
{
    private const double Wide = 820, Left = 86, Right = 16, Top = 34, Strip = 62, Gap = 12, Bars = 34;
    private const int MostDayNames = 16;

    /// <summary>The plan as SVG text.</summary>
    /// <param name="plan">The plan; at least one tank.</param>
    /// <param name="closed">Hours in which nobody works the press, hatched.</param>
    /// <exception cref="ArgumentException">The plan has no tank.</exception>
    public static string Draw(UpkeepPlan plan, IReadOnlyList<IdleSpan> closed)
    {
        Bounds.NotEmpty(plan.Tanks);
        double high = Top + (plan.Tanks.Count * (Strip + Gap)) + Bars + 54;
        SvgPaper paper = new(Wide, high, "Tank levels along the plan", string.Join(" ", plan.Tanks.Select(Describe)));
        double bottom = Top + (plan.Tanks.Count * (Strip + Gap)) + Bars - Gap;
        foreach (IdleSpan span in closed)
            paper.Hatch(X(plan, span.Start), Top, X(plan, span.End) - X(plan, span.Start), bottom - Top, 135, 9, Pen.Faint);
        Days(paper, plan, bottom);
        int number = 0;
        for (int i = 0; i < plan.Tanks.Count; i++)
            number = Tank(paper, plan, plan.Tanks[i], Top + (i * (Strip + Gap)), number);
        Runs(paper, plan, bottom - Bars + Gap);
        Key(paper, bottom + 42);
        return paper.Done();
    }

    /// <summary>Top-ups in the order of their numbers in the drawing: tank by tank, earliest first.</summary>
    public static IEnumerable<TopUp> Numbered(UpkeepPlan plan) => plan.Tanks.SelectMany(t => t.TopUps);

    private static int Tank(SvgPaper paper, UpkeepPlan plan, TankPlan tank, double top, int number)
    {
        double bottom = top + Strip;
        double Y(double ml) => bottom - (Strip * Math.Clamp(ml / tank.CapacityMl, 0, 1));
        paper.Text(Left - 10, top + 16, tank.TankId, Lettering.Name, 14, "end");
        paper.Text(Left - 10, top + 31, Invariant($"{tank.CapacityMl:0}"), Lettering.Quiet, 10, "end");
        paper.Text(Left - 10, bottom, "0 ml", Lettering.Quiet, 10, "end");
        paper.Rect(Left, top, Wide - Left - Right, Strip, Pen.Hair);
        paper.Line(Left, Y(tank.LowMl), Wide - Right, Y(tank.LowMl), tank.Shortages.Count > 0 ? Pen.Accent : Pen.Broken);
        StringBuilder line = new();
        foreach (TankPoint point in Within(plan, tank))
            line.Append(CultureInfo.InvariantCulture, $"{(line.Length == 0 ? "M" : "L")}{X(plan, point.At):0.##} {Y(point.LevelMl):0.##}");
        paper.Halo(line.ToString());
        paper.Path(line.ToString(), Pen.Edge);
        foreach (TopUp topUp in tank.TopUps.Where(t => t.At >= plan.From))
            paper.Number(X(plan, topUp.At), top + 12, number + 1 + tank.TopUps.ToList().IndexOf(topUp), topUp.MissingMl > 0);
        foreach (TankShortage shortage in tank.Shortages)
            paper.Text(X(plan, shortage.DryAt ?? shortage.LowAt), bottom - 5, shortage.DryAt is null ? "low" : "dry", Lettering.Accent, 11, "middle");
        return number + tank.TopUps.Count;
    }

    // Before the plan begins there may be hours since the reading; the line is cut at the plan's start.
    private static IEnumerable<TankPoint> Within(UpkeepPlan plan, TankPlan tank)
    {
        for (int i = 0; i < tank.Levels.Count; i++)
        {
            TankPoint point = tank.Levels[i];
            if (point.At >= plan.From)
                yield return point;
            else if (i + 1 == tank.Levels.Count || tank.Levels[i + 1].At > plan.From)
                yield return new(plan.From, Between(tank.Levels, i, plan.From));
        }
    }

    private static double Between(IReadOnlyList<TankPoint> levels, int i, DateTimeOffset at)
    {
        if (i + 1 == levels.Count)
            return levels[i].LevelMl;
        double share = (at - levels[i].At) / (levels[i + 1].At - levels[i].At);
        return levels[i].LevelMl + (share * (levels[i + 1].LevelMl - levels[i].LevelMl));
    }

    private static void Days(SvgPaper paper, UpkeepPlan plan, double bottom)
    {
        int days = (int)Math.Ceiling((plan.To - plan.From).TotalDays), each = (days + MostDayNames - 1) / MostDayNames;
        for (int i = 0; i <= days; i++)
        {
            DateTimeOffset day = new(plan.From.Date.AddDays(i), plan.From.Offset);
            if (day < plan.From || day > plan.To)
                continue;
            paper.Line(X(plan, day), Top, X(plan, day), bottom, Pen.Faint);
            if (i % each == 0 && X(plan, day) < Wide - 40)
            {
                paper.Text(X(plan, day) + 3, Top - 16, day.ToString("ddd", CultureInfo.InvariantCulture), Lettering.Quiet, 10.5);
                paper.Text(X(plan, day) + 3, Top - 4, day.ToString("d MMM", CultureInfo.InvariantCulture), Lettering.Quiet, 10.5);
            }
        }
    }

    private static void Runs(SvgPaper paper, UpkeepPlan plan, double top)
    {
        paper.Text(Left - 10, top + 14, "prints", Lettering.Quiet, 11, "end");
        paper.Line(Left, top + 20, Wide - Right, top + 20, Pen.Hair);
        foreach (PressUse use in plan.Uses.Where(u => u.End > plan.From && u.Start < plan.To))
        {
            double from = X(plan, use.Start), to = Math.Max(from + 1, X(plan, use.End));
            paper.Solid(Invariant($"M{from:0.##} {top + 4:0.##}H{to:0.##}V{top + 20:0.##}H{from:0.##}Z"), accent: false);
        }
    }

    private static void Key(SvgPaper paper, double y)
    {
        paper.Number(Left + 8, y - 4, 1);
        paper.Text(Left + 24, y, "ink is topped up", Lettering.Quiet, 11);
        paper.Line(Left + 130, y - 4, Left + 152, y - 4, Pen.Broken);
        paper.Text(Left + 158, y, "low mark", Lettering.Quiet, 11);
        paper.Hatch(Left + 222, y - 10, 22, 12, 135, 5, Pen.Faint);
        paper.Text(Left + 250, y, "nobody works the press", Lettering.Quiet, 11);
        paper.Solid(Invariant($"M{Left + 392:0.##} {y - 10:0.##}h22v12h-22z"), accent: false);
        paper.Text(Left + 420, y, "the press prints", Lettering.Quiet, 11);
    }

    private static double X(UpkeepPlan plan, DateTimeOffset at) =>
        Left + ((Wide - Left - Right) * Math.Clamp((at - plan.From) / (plan.To - plan.From), 0, 1));

    private static string Describe(TankPlan tank) =>
        Invariant($"{tank.TankId} ({InkWords.Of(tank.Role)}): {tank.Levels[0].LevelMl:0} ml, at the end {tank.Levels[^1].LevelMl:0} ml, topped up {tank.TopUps.Count} times")
        + (tank.Shortages.Count > 0 ? ", falls low." : ".");
}
