namespace Laydown.Colour.Fits;

/// <summary>Factors of a kernel between the distinct levels of each ink: a chart has few levels, so exponentials are taken once.</summary>
internal sealed class FactorTable
{
    private readonly int inks;
    private readonly double[][] longs, shorts;
    private readonly int[] levelCount;
    private readonly int[] levelOf;
    private readonly double shortShare;

    /// <summary>The table for a set of points.</summary>
    /// <param name="kernel">The kernel.</param>
    /// <param name="points">Inks of each point.</param>
    internal FactorTable(InkKernel kernel, IReadOnlyList<double[]> points)
    {
        inks = kernel.Inks;
        shortShare = kernel.ShortShare;
        Count = points.Count;
        levelOf = new int[Count * inks];
        (longs, shorts, levelCount) = (new double[inks][], new double[inks][], new int[inks]);
        for (int ink = 0; ink < inks; ink++)
        {
            double[] levels = [.. points.Select(p => p[ink]).Distinct().Order()];
            levelCount[ink] = levels.Length;
            for (int point = 0; point < Count; point++)
                levelOf[(point * inks) + ink] = Array.BinarySearch(levels, points[point][ink]);
            longs[ink] = new double[levels.Length * levels.Length];
            shorts[ink] = new double[levels.Length * levels.Length];
            for (int one = 0; one < levels.Length; one++)
            {
                for (int other = 0; other < levels.Length; other++)
                {
                    longs[ink][(one * levels.Length) + other] = kernel.LongFactor(ink, levels[one], levels[other]);
                    shorts[ink][(one * levels.Length) + other] = kernel.ShortFactor(ink, levels[one], levels[other]);
                }
            }
        }
    }

    /// <summary>Number of points.</summary>
    internal int Count { get; }

    /// <summary>The kernel between two of the points.</summary>
    internal double Between(int one, int other)
    {
        double product = 1, shortProduct = shortShare;
        for (int ink = 0; ink < inks; ink++)
        {
            int at = (levelOf[(one * inks) + ink] * levelCount[ink]) + levelOf[(other * inks) + ink];
            product *= longs[ink][at];
            shortProduct *= shorts[ink][at];
        }

        return product + shortProduct;
    }
}
