using System.Collections.Concurrent;
using Laydown.Colour.Spaces;

namespace Laydown.Optics.Panels;

/// <summary>Finds why pixels are out of reach, by asking for each view alone.</summary>
internal sealed class Reasons
{
    private const float Round = 5;
    private readonly PanelPlan plan;
    private readonly PairPicture small;
    private readonly JudgedPixels pixels;
    private readonly PairSolver[] dayAlone, nightAlone;
    private readonly ConcurrentDictionary<(int, int, int, int), (Lab Seen, double Left)> days = new(), nights = new();

    internal Reasons(PanelPlan plan, PairPicture small, JudgedPixels pixels)
    {
        (this.plan, this.small, this.pixels) = (plan, small, pixels);
        PairSolver Alone(PairTable table, double weight) => new(table.Solver.Light, plan.Model.Stack.Limits, plan.Aim, weight);
        dayAlone = [.. plan.Tables.Select(t => Alone(t, 0))];
        nightAlone = [.. plan.Tables.Select(t => Alone(t, 1000))];
    }

    internal UnreachableReason[] All(CancellationToken cancellation)
    {
        UnreachableReason[] reasons = new UnreachableReason[pixels.Count];
        Parallel.For(0, small.Height, new ParallelOptions { CancellationToken = cancellation }, row =>
        {
            for (int pixel = row * small.Width; pixel < (row + 1) * small.Width; pixel++)
                reasons[pixel] = Of(pixel);
        });
        return reasons;
    }

    private UnreachableReason Of(int pixel)
    {
        if (pixels.DayDifference[pixel] <= PanelJudge.Reached && pixels.NightDifference[pixel] <= PanelJudge.Reached)
            return UnreachableReason.Reached;
        ReadOnlySpan<float> six = pixels.Wanted.AsSpan(6 * pixel, 6), seen = pixels.Seen.AsSpan(6 * pixel, 6);
        Lab day = Rounded(six), night = Rounded(six[3..]);
        int level = Level(pixels.Strength[pixel] / 255.0);
        (Lab bestDay, double dayLeft) = days.GetOrAdd(KeyOf(day, level), _ => Alone(dayAlone[level], day, lit: false));
        (Lab bestNight, double nightLeft) = nights.GetOrAdd(KeyOf(night, level), _ => Alone(nightAlone[level], night, lit: true));
        if (dayLeft > PanelJudge.Reached && pixels.DayDifference[pixel] > PanelJudge.Reached)
            return Alone(day, bestDay, UnreachableReason.DayTooLight, UnreachableReason.DayTooDark, UnreachableReason.DayTooColourful);
        if (nightLeft > PanelJudge.Reached && pixels.NightDifference[pixel] > PanelJudge.Reached)
            return Alone(night, bestNight, UnreachableReason.NightTooBright, UnreachableReason.NightTooDark, UnreachableReason.NightTooColourful);

        // Both views within reach alone: is it light or hue that the day ink costs the night, or the night ink the day?
        double light = Math.Max(six[3] - seen[3], seen[0] - six[0]);
        double hue = Math.Max(Apart(six[1..3], seen[1..3]), Apart(six[4..6], seen[4..6]));
        if (Math.Max(light, hue) <= PanelJudge.Reached)
            return UnreachableReason.Traded;
        return light > hue ? UnreachableReason.DayHoldsLightBack : UnreachableReason.DayFiltersHue;
    }

    private static double Apart(ReadOnlySpan<float> one, ReadOnlySpan<float> other) =>
        Math.Sqrt(Math.Pow(one[0] - other[0], 2) + Math.Pow(one[1] - other[1], 2));

    private static UnreachableReason Alone(Lab wanted, Lab best, UnreachableReason light, UnreachableReason dark, UnreachableReason colourful)
    {
        double step = wanted.L - best.L, across = Math.Sqrt(Math.Pow(wanted.A - best.A, 2) + Math.Pow(wanted.B - best.B, 2));
        return Math.Abs(step) < across / 2 ? colourful : step > 0 ? light : dark;
    }

    private (Lab Seen, double Left) Alone(PairSolver solver, Lab wanted, bool lit)
    {
        Span<double> inks = stackalloc double[plan.Model.InkCount];

        // The other view is asked for a middle grey; at these weights it hardly counts.
        solver.Solve(lit ? new(50, 0, 0) : wanted, lit ? wanted : new(50, 0, 0), inks);
        (Xyz day, Xyz night) = solver.Light.See(inks);
        Lab seen = lit ? plan.Aim.SeenLit(night) : plan.Aim.SeenByDay(day);
        return (seen, Ciede2000.Between(seen, wanted));
    }

    private int Level(double strength)
    {
        int nearest = 0;
        for (int i = 1; i < plan.WhiteStrengths.Count; i++)
            nearest = Math.Abs(plan.WhiteStrengths[i] - strength) < Math.Abs(plan.WhiteStrengths[nearest] - strength) ? i : nearest;
        return nearest;
    }

    private static Lab Rounded(ReadOnlySpan<float> lab) =>
        new(Round * MathF.Round(lab[0] / Round), Round * MathF.Round(lab[1] / Round), Round * MathF.Round(lab[2] / Round));

    private static (int, int, int, int) KeyOf(Lab lab, int level) => ((int)lab.L, (int)lab.A, (int)lab.B, level);
}
