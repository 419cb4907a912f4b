using Laydown.Colour.Curves;
using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Colour.Calibration;

/// <summary>Designs how light and dark ink share a hue: the split with the least grain that keeps every law.</summary>
/// <remarks>
/// Demand D, light L, dark K, strength s: s·L + K = D, so K alone is sought. Laws: K never falls and climbs at most <see cref="Steepest"/>
/// times as fast as D; L ≤ the light limit; L + K ≤ the pair limit; K(0) = 0, K(1) = 1. All are straight-line bounds, and each lower bound
/// is convex, so they outlive means over windows that lie evenly about D: the least-grain K is found on a grid by dynamic programming
/// and then smoothed by such means. Limits are lowered to whole codes of 8 bits (the pair's to just under one), so that they hold after
/// rounding to 8 bits too, to the nearest or down. Own construction; no source.
/// </remarks>
public static class LightSplitDesign
{
    /// <summary>Values of the dark curve: every 0.5 % of demand.</summary>
    public const int Values = 201;

    /// <summary>Most that the dark ink climbs for one step of demand: steeper splits show as a line in a vignette.</summary>
    public const double Steepest = 3;

    // Four levels of dark ink to a step of demand; windows of ±4 %, twice over.
    private const int Levels = (4 * (Values - 1)) + 1;
    private const int HalfWindow = 8;

    /// <summary>The split of a pair of inks from their wedges.</summary>
    /// <param name="light">Wedge of the light ink.</param>
    /// <param name="dark">Wedge of the dark ink.</param>
    /// <param name="lightLimitPercent">Most of the light ink, percent, 5 to 100.</param>
    /// <param name="pairLimitPercent">Most of both together, percent, 100 to 200.</param>
    /// <param name="file">Name of the file for messages.</param>
    public static Reading<LightSplit> Make(Wedge light, Wedge dark, double lightLimitPercent, double pairLimitPercent, string file)
    {
        InputFault Fault(string found, string wanted) => new(file, null, Invariant($"split of {light.Ink} and {dark.Ink}"), found, wanted);
        if (!(lightLimitPercent is >= 5 and <= 100))
            return Reading.Refused<LightSplit>(Fault(Invariant($"a light limit of {lightLimitPercent} %"), "5 % to 100 %"));
        if (!(pairLimitPercent is >= 100 and <= 200))
            return Reading.Refused<LightSplit>(Fault(Invariant($"a limit of both of {pairLimitPercent} %"), "100 % to 200 %"));
        (double strength, double residual) = StrengthOf(light, dark);
        if (!(strength is >= 0.05 and <= 0.95))
        {
            return Reading.Refused<LightSplit>(Fault(
                Invariant($"a light ink of {strength:0.00} times the dark ink's strength"), "0.05 to 0.95: the wedges may be swapped"));
        }

        DotGrain grain = new(dark.Paper.Lab.L, light.Solid.Lab.L, dark.Solid.Lab.L);
        return Reading.Of(Make(strength, grain, lightLimitPercent, pairLimitPercent) with { StrengthResidual = residual });
    }

    /// <summary>The split for a known strength.</summary>
    /// <param name="strength">Colourant of the light ink as a share of the dark ink's, 0.05 to 0.95.</param>
    /// <param name="grain">Lightness of stock and inks.</param>
    /// <param name="lightLimitPercent">Most of the light ink, percent, 5 to 100.</param>
    /// <param name="pairLimitPercent">Most of both together, percent, 100 to 200.</param>
    public static LightSplit Make(double strength, DotGrain grain, double lightLimitPercent, double pairLimitPercent)
    {
        Bounds.Within(strength, 0.05, 0.95);
        double lightMost = Math.Floor(Bounds.Within(lightLimitPercent, 5, 100) * 2.55 + 1e-9) / 255;
        double pairMost = (Math.Floor(Bounds.Within(pairLimitPercent, 100, 200) * 2.55 + 1e-9) - 0.01) / 255;
        double[] least = [.. Enumerable.Range(0, Values).Select(i => Least(i / (Values - 1.0), strength, lightMost, pairMost))];
        double[] dark = Smoothed(Smoothed(LeastGrain(strength, grain, least)));

        double straight = grain.Mean(strength, [.. Enumerable.Range(0, Values).Select(i => i / (Values - 1.0))]);
        double designed = grain.Mean(strength, dark);
        int start = Array.FindIndex(dark, k => k > 0.002);
        return new(strength, 0, 100.0 * start / (Values - 1), lightMost * 100, [.. dark.Select(k => 100 * k)],
            Grain("graininess of the split", designed), Grain("graininess of the dark ink alone", straight));
    }

    /// <summary>Strength of a light ink against its dark ink: for each light step up to its full ink the dark ink that looks most
    /// alike.</summary>
    /// <returns>Strength s of the least-squares line dark = s × light through 0, and the root mean square ΔE00 along it.</returns>
    public static (double Strength, double Residual) StrengthOf(Wedge light, Wedge dark)
    {
        double[] x = [.. dark.Steps.Select(s => s.Ink)];
        MonotoneCurve l = new(x, [.. dark.Steps.Select(s => s.Lab.L)]), a = new(x, [.. dark.Steps.Select(s => s.Lab.A)]);
        MonotoneCurve b = new(x, [.. dark.Steps.Select(s => s.Lab.B)]);
        Lab At(double ink) => new(l.At(ink), a.At(ink), b.At(ink));
        double product = 0, square = 0;
        foreach (WedgeStep step in light.Steps.Skip(1))
        {
            double best = Enumerable.Range(0, 1001).MinBy(i => Ciede2000.Between(step.Lab, At(i / 1000.0))) / 1000.0;
            product += best * step.Ink;
            square += step.Ink * step.Ink;
        }

        double strength = product / square;
        double residual = light.Steps.Skip(1).Average(s => Math.Pow(Ciede2000.Between(s.Lab, At(strength * s.Ink)), 2));
        return (strength, Math.Sqrt(residual));
    }

    // The least dark ink that keeps light and pair within their limits.
    private static double Least(double demand, double strength, double lightMost, double pairMost) =>
        Math.Min(demand, Math.Max(0, Math.Max(demand - (strength * lightMost), (demand - (strength * pairMost)) / (1 - strength))));

    // Least sum of grain over paths K(0) = 0 … K(1) = 1 that never fall and climb at most Steepest levels a step.
    private static double[] LeastGrain(double strength, DotGrain grain, double[] least)
    {
        const int climb = (int)(Steepest * 4);
        double[] cost = [.. Enumerable.Repeat(double.PositiveInfinity, Levels)];
        int[,] from = new int[Values, Levels];
        cost[0] = 0;
        for (int step = 1; step < Values; step++)
        {
            double demand = step / (Values - 1.0);
            double[] next = [.. Enumerable.Repeat(double.PositiveInfinity, Levels)];
            for (int level = (int)Math.Ceiling((least[step] * (Levels - 1)) - 1e-9); level <= 4 * step; level++)
            {
                int before = Enumerable.Range(Math.Max(0, level - climb), Math.Min(climb, level) + 1).MinBy(b => cost[b]);
                double dark = level / (Levels - 1.0);
                next[level] = cost[before] + grain.Of((demand - dark) / strength, dark);
                from[step, level] = before;
            }

            cost = next;
        }

        double[] path = new double[Values];
        for (int step = Values - 1, level = Levels - 1; step >= 0; level = from[step, level], step--)
            path[step] = level / (Levels - 1.0);
        return path;
    }

    // Means over windows evenly about each place, narrower towards the ends.
    private static double[] Smoothed(double[] dark) => [.. dark.Select((_, i) =>
    {
        int half = Math.Min(HalfWindow, Math.Min(i, dark.Length - 1 - i));
        double sum = 0;
        for (int at = i - half; at <= i + half; at++)
            sum += dark[at];
        return sum / ((2 * half) + 1);
    })];

    private static Figure Grain(string name, double value) =>
        new(name, value, "ΔL*²", "mean over even demands of Σ a (1 − a) ΔL*² of each dot against its surround",
            "common practice, no source");
}
