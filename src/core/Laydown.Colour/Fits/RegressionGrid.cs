using Laydown.Colour.Curves;

namespace Laydown.Colour.Fits;

/// <summary>Turns a regression into a grid that works fast.</summary>
internal static class RegressionGrid
{
    private const int RampLevels = 65;
    private const int Probes = 40;
    private const int LeastSteps = 3;
    private const int MostSteps = 33;
    private static readonly double[] Primes = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53];

    /// <summary>The grid of a regression; each ink has nodes even in effective coverage, more where the colour bends more with it.</summary>
    internal static FitGrid Of(IReadOnlyList<string> inkNames, Regression regression, CancellationToken cancellation)
    {
        CoverageCurve[] curves = [.. inkNames.Select((_, ink) => Curve(regression, ink, inkNames.Count))];
        cancellation.ThrowIfCancellationRequested();
        double[][] nodes = [.. Steps(regression, curves).Select(steps => Enumerable.Range(0, steps).Select(i => i / (double)(steps - 1)).ToArray())];
        double[][] levels = [.. curves.Zip(nodes, (curve, axis) => axis.Select(curve.InkFor).ToArray())];
        float[] roots = regression.OnGrid(levels, cancellation);
        return new(
            inkNames, regression.Space.YuleNielsen, [.. curves.Select(c => c.Values)], nodes, [.. roots.Select(r => Math.Clamp(r, 0, 2))]);
    }

    private static int Budget(int inks) => inks switch
    {
        <= 4 => 100_000,
        5 => 200_000,
        6 => 400_000,
        _ => 1_200_000,
    };

    // What lines between nodes miss falls with the square of the steps, so with a fixed number of nodes each ink gets steps by the root of
    // how much the roots bend along it; measured at scattered mixtures.
    private static int[] Steps(Regression regression, CoverageCurve[] curves)
    {
        int inks = curves.Length;
        double[] bends = [.. Enumerable.Range(0, inks).Select(ink => 1e-4 + Bend(regression, curves, ink))];
        double scale = Math.Pow(Budget(inks) / bends.Aggregate(1.0, (p, b) => p * Math.Sqrt(b)), 1.0 / inks);
        int[] steps = [.. bends.Select(b => Math.Clamp((int)Math.Round(scale * Math.Sqrt(b)) + 1, LeastSteps, MostSteps))];
        while (steps.Aggregate(1L, (p, s) => p * s) > Budget(inks))
            steps[Array.IndexOf(steps, steps.Max())]--;
        return steps;
    }

    private static double Bend(Regression regression, CoverageCurve[] curves, int ink)
    {
        const double stride = 0.15;
        double[] left = new double[3], middle = new double[3], right = new double[3], mixture = new double[curves.Length];
        double sum = 0;
        for (int probe = 1; probe <= Probes; probe++)
        {
            // Mixtures scattered evenly by multiples of irrational numbers that do not depend on each other, light ones oftener, as pictures have them.
            for (int i = 0; i < mixture.Length; i++)
            {
                double part = probe * Math.Sqrt(Primes[i]);
                part -= Math.Floor(part);
                mixture[i] = i == ink ? stride + (part * (1 - (2 * stride))) : part * part;
            }

            double centre = mixture[ink];
            At(centre - stride, left);
            At(centre, middle);
            At(centre + stride, right);
            for (int axis = 0; axis < 3; axis++)
                sum += Math.Abs(left[axis] + right[axis] - (2 * middle[axis])) / Probes;
        }

        return sum;

        void At(double coverage, double[] roots)
        {
            double[] inks = [.. mixture];
            inks[ink] = curves[ink].InkFor(coverage);
            regression.Predict(inks, roots);
        }
    }

    private static CoverageCurve Curve(Regression regression, int ink, int inks)
    {
        double[] levels = [.. Enumerable.Range(0, RampLevels).Select(i => i / (double)(RampLevels - 1))];
        double[][] roots = [.. levels.Select(level =>
        {
            double[] mixture = new double[inks], root = new double[3];
            mixture[ink] = level;
            regression.Predict(mixture, root);
            return root;
        })];
        return Ramps.Curve(levels, roots);
    }
}
