namespace Laydown.Colour.Fits;

/// <summary>Finds the kernel under which each reading is best predicted by the others.</summary>
/// <remarks>
/// Coordinate search over the logarithms of all numbers of the kernel, and over n; the same steps for the same points. A part of the
/// points is enough: a thousand, single inks first, the others evenly through the chart. The search has some two
/// dozen numbers to choose from a thousand readings, so it hardly learns single patches: found anew without each fold, the held-out
/// mean of four public charts changes by at most 0.004 ΔE00.
/// </remarks>
internal static class KernelSearch
{
    private const int MostPoints = 1000;
    private const int MostPointsThorough = 1800;
    private const int FewLevels = 6;
    private const int Sweeps = 2;
    private const int SweepsThorough = 5;
    private static readonly double[] Factors = [2, 2.5, 3];

    /// <summary>The best kernel and scale found.</summary>
    internal static (InkKernel Kernel, RootSpace Space) Best(FitPoints points, bool thorough, CancellationToken cancellation)
    {
        // Few levels cannot tell how colour bends between them: each node left out asks for the wrong bend, so nothing is searched for.
        if (Enumerable.Range(0, points.Inks[0].Length).Max(ink => points.Inks.Select(p => p[ink]).Distinct().Count()) <= FewLevels)
            return (InkKernel.Stiff(points.Inks[0].Length), new(Factors[^1]));

        FitPoints some = points.Only(Part(points, thorough ? MostPointsThorough : MostPoints));
        int inks = points.Inks[0].Length;
        double[] best = Numbers(InkKernel.Usual(inks));
        RootSpace space = new(Factors[0]);
        double bestError = double.PositiveInfinity;
        foreach (double factor in Factors)
            Try(best, new(factor));

        // One number after the other, up and down; what helped is followed once more in the next sweep with half the stride.
        double stride = Math.Log(2.2);
        int sweeps = thorough ? SweepsThorough : Sweeps;
        for (int sweep = 0; sweep < sweeps; sweep++, stride *= sweep > sweeps / 2 - 1 ? 0.5 : 1)
        {
            for (int number = 0; number < best.Length; number++)
            {
                double[] up = [.. best], down = [.. best];
                up[number] += stride;
                down[number] -= stride;
                if (!Try(up, space))
                    Try(down, space);
            }
        }

        return (Kernel(best, inks), space);

        bool Try(double[] numbers, RootSpace scale)
        {
            double[]? errors = Regression.LeaveOneOut(Kernel(numbers, inks), some, scale, cancellation);
            double error = errors?.Average() ?? double.PositiveInfinity;
            if (!(error < bestError))
                return false;
            (best, space, bestError) = (numbers, scale, error);
            return true;
        }
    }

    private static List<int> Part(FitPoints points, int most)
    {
        int[] all = [.. Enumerable.Range(0, points.Count)];
        if (points.Count <= most)
            return [.. all];
        List<int> single = [.. all.Where(i => points.Inks[i].Count(c => c > 0) <= 1).Take(most / 2)];
        int[] rest = [.. all.Except(single)];
        int wanted = most - single.Count;
        single.AddRange(Enumerable.Range(0, wanted).Select(i => rest[(int)((long)i * rest.Length / wanted)]));
        return [.. single.Order()];
    }

    private static double[] Numbers(InkKernel kernel) =>
    [
        Math.Log(kernel.ShortShare), Math.Log(kernel.ShortReach), Math.Log(kernel.ShortBent), Math.Log(kernel.Noise),
        .. kernel.Reach.Select(v => Math.Log(v)), .. kernel.Bent.Select(v => Math.Log(v)), .. kernel.Linear.Select(v => Math.Log(v)),
    ];

    private static InkKernel Kernel(double[] numbers, int inks)
    {
        double[] Part(int part) => [.. numbers.Skip(4 + (part * inks)).Take(inks).Select(Math.Exp)];
        return new(Part(2), Part(1), Part(0), Math.Exp(numbers[0]), Math.Exp(numbers[1]), Math.Exp(numbers[2]), Math.Exp(numbers[3]));
    }
}
