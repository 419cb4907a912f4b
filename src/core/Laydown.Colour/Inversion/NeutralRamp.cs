using Laydown.Colour.Inks;

namespace Laydown.Colour.Inversion;

/// <summary>Black along the neutral axis such that no ink turns back on the way from white to the darkest grey.</summary>
/// <remarks>
/// In the darks the total limit makes colour ink give way to black. So from the darkest grey upward each grey gets at least as much black
/// as keeps every other ink at or under what the darker grey has; light inks apart, which fall by their nature. Where a print has room
/// for little colour ink beside full black, black so starts above the start that was wished for. Then the ramp is smoothed.
/// </remarks>
internal static class NeutralRamp
{
    private const int Steps = 200;
    private const double Slack = 1e-4;
    private const int Smoothing = 4;

    /// <summary>The policy with such a ramp.</summary>
    internal static BlackPolicy Steady(IInkModel model, InkLimits limits, BlackPolicy policy, InkWishes wishes)
    {
        if (wishes.Black is not { } black || !policy.Steady)
            return policy;
        InkInverse inverse = new(model, limits, policy, wishes);
        double[] ramp = new double[Steps + 1], darker = [.. Enumerable.Range(0, model.Inks).Select(i => i == black ? 1 : 0.5)];
        double darkest = ProfileTableMaker.DarkestNeutral(inverse).L;
        inverse.Solve(new(darkest, 0, 0), darker, [.. inverse.EverywhereStarts]);
        for (int step = 0; step <= Steps; step++)
        {
            double lightness = 100.0 * step / Steps, plain = Math.Min(policy.Wanted(new(lightness, 0, 0)), limits.PerInk[black]);
            ramp[step] = plain;
            if (lightness < darkest)
                ramp[step] = Math.Max(plain, darker[black]);
            else
                ramp[step] = Enough(inverse, lightness, plain, darker, black);
        }

        return policy with { Ramp = Smooth(ramp) };
    }

    // The least black from the plain wish up to what the darker grey has; leaves the inks of this grey behind.
    private static double Enough(InkInverse inverse, double lightness, double plain, double[] darker, int black)
    {
        double[] found = Solve(inverse, lightness, plain, darker);
        double low = plain, high = Math.Max(plain, darker[black]);
        if (Turns(inverse, found, darker, black))
        {
            for (int halving = 0; halving < 12; halving++)
            {
                double middle = (low + high) / 2;
                found = Solve(inverse, lightness, middle, darker);
                (low, high) = Turns(inverse, found, darker, black) ? (middle, high) : (low, middle);
            }

            found = Solve(inverse, lightness, high, darker);
        }
        else
        {
            high = plain;
        }

        found.CopyTo(darker, 0);
        return high;
    }

    private static double[] Solve(InkInverse inverse, double lightness, double black, double[] start)
    {
        double[] inks = [.. start];
        inverse.SolveKeeping(new(lightness, 0, 0), black, inks);
        return inks;
    }

    private static bool Turns(InkInverse inverse, double[] inks, double[] darker, int black) => Enumerable.Range(0, inks.Length)
        .Any(i => i != black && inverse.Wishes.LightPairs.All(p => p.Light != i) && inks[i] > darker[i] + Slack);

    // Means over some steps; toward the start of black over fewer, so that none comes before it.
    private static double[] Smooth(double[] ramp)
    {
        int start = Array.FindLastIndex(ramp, r => r > 0);
        return [.. ramp.Select((r, step) =>
        {
            int reach = Math.Min(Smoothing, Math.Min(step, Math.Abs(start + 1 - step)));
            return step > start ? 0 : ramp.AsSpan(step - reach, (2 * reach) + 1).ToArray().Average();
        })];
    }
}
