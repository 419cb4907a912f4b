using Laydown.Measures;

namespace Laydown.Plan.Drawings;

/// <summary>Draws tanks side by side: level now, what the run takes, the low mark.</summary>
public static class TankDrawing
{
    private const double Column = 84, Left = 50, Top = 40, High = 190, Wide = 46;

    /// <summary>The tanks as SVG text, all to one height; the part the run takes is hatched, what stays is dotted.</summary>
    /// <param name="tanks">At least one tank.</param>
    /// <exception cref="ArgumentException">No tank, or a capacity that is not over 0.</exception>
    public static string Draw(IReadOnlyList<TankNeed> tanks)
    {
        Bounds.NotEmpty(tanks);
        foreach (TankNeed tank in tanks)
            Bounds.Within(tank.CapacityMl, 1, 1e7, nameof(tanks));

        double width = Math.Max(420, Left + (Column * tanks.Count) + 20);
        SvgPaper paper = new(width, Top + High + 92, "Ink tanks", string.Join(" ", tanks.Select(Describe)));
        for (int i = 0; i <= 4; i++)
        {
            double y = Top + (High * i / 4);
            paper.Line(Left - 6, y, Left + (Column * tanks.Count) - 12, y, Pen.Faint);
            paper.Text(Left - 10, y + 4, Invariant($"{100 - (i * 25)} %"), Lettering.Figure, 10.5, "end");
        }

        for (int i = 0; i < tanks.Count; i++)
            Tank(paper, tanks[i], Left + 8 + (i * Column));
        Key(paper, Top + High + 76);
        return paper.Done();
    }

    private static void Tank(SvgPaper paper, TankNeed tank, double x)
    {
        double Height(double ml) => Top + High - (High * Math.Clamp(ml / tank.CapacityMl, 0, 1));
        double level = Height(tank.LevelMl), after = Height(tank.AfterMl), low = Height(tank.LowMl), bottom = Top + High;
        paper.Blank(x, Top, Wide, High);
        if (bottom - after > 1)
            paper.Dots(x, after, Wide, bottom - after, 6);
        if (after - level > 0.4)
            paper.Hatch(x, level, Wide, after - level, 45, 5);

        paper.Line(x, level, x + Wide, level, Pen.Edge);
        paper.Line(x - 5, low, x + Wide + 5, low, tank.FallsLow ? Pen.Accent : Pen.Broken);
        paper.Path(Invariant($"M{x:0.##} {Top - 6}V{bottom}H{x + Wide:0.##}V{Top - 6}"), Pen.Edge);

        double middle = x + (Wide / 2);
        paper.Text(middle, Top - 14, tank.Id, Lettering.Name, 14, "middle");
        paper.Text(middle, bottom + 16, Invariant($"{tank.LevelMl:0} ml"), Lettering.Figure, 11.5, "middle");
        paper.Text(middle, bottom + 31, Invariant($"− {tank.NeedMl:0.#}"), Lettering.Figure, 11.5, "middle");
        paper.Line(x - 4, bottom + 36, x + Wide + 4, bottom + 36, Pen.Hair);
        paper.Text(middle, bottom + 49, Invariant($"{tank.AfterMl:0}"), tank.FallsLow ? Lettering.Accent : Lettering.Figure, 11.5, "middle");
        if (tank.FallsLow)
            paper.Text(middle, bottom + 62, tank.AfterMl < 0 ? "runs dry" : "falls low", Lettering.Accent, 10.5, "middle");
    }

    private static void Key(SvgPaper paper, double y)
    {
        paper.Hatch(Left, y - 9, 16, 11, 45, 5);
        paper.Rect(Left, y - 9, 16, 11, Pen.Hair);
        paper.Text(Left + 22, y, "this run", Lettering.Quiet, 11);
        paper.Dots(Left + 84, y - 9, 16, 11, 6);
        paper.Rect(Left + 84, y - 9, 16, 11, Pen.Hair);
        paper.Text(Left + 106, y, "stays", Lettering.Quiet, 11);
        paper.Line(Left + 152, y - 4, Left + 172, y - 4, Pen.Broken);
        paper.Text(Left + 178, y, "low mark", Lettering.Quiet, 11);
    }

    private static string Describe(TankNeed tank) =>
        Invariant($"{tank.Id} ({tank.Ink}): {tank.LevelMl:0} of {tank.CapacityMl:0} ml, this run takes {tank.NeedMl:0.#} ml, {tank.AfterMl:0} ml stay")
        + (tank.AfterMl < 0 ? ", it runs dry." : tank.FallsLow ? Invariant($", below the low mark of {tank.LowMl:0} ml.") : ".");
}
