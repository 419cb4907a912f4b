namespace Laydown.Plan.Log;

/// <summary>What turns a mean range or a mean standard deviation of small groups into limits of a chart, for normal values.</summary>
/// <remarks>Reckoned, not copied: d2 and d3 are mean and spread of the range of n normal values of spread 1, c4 the mean of their standard deviation. [Pyzdek2003]</remarks>
/// <param name="N">Values of a group, 2 to 25.</param>
/// <param name="C4">Mean of the standard deviation over the spread.</param>
/// <param name="D2">Mean of the range over the spread.</param>
/// <param name="RangeSpread">Spread of the range over the spread (d3).</param>
public sealed record ChartConstants(int N, double C4, double D2, double RangeSpread)
{
    /// <summary>Mean range to limits of the means: 3 / (d2 √n).</summary>
    public double A2 => 3 / (D2 * Math.Sqrt(N));

    /// <summary>Mean standard deviation to limits of the means: 3 / (c4 √n).</summary>
    public double A3 => 3 / (C4 * Math.Sqrt(N));

    /// <summary>Mean range to its lower limit; 0 where that would lie under 0.</summary>
    public double D3 => Math.Max(0, 1 - (3 * RangeSpread / D2));

    /// <summary>Mean range to its upper limit.</summary>
    public double D4 => 1 + (3 * RangeSpread / D2);

    /// <summary>Mean standard deviation to its lower limit; 0 where that would lie under 0.</summary>
    public double B3 => Math.Max(0, 1 - (3 * Math.Sqrt(1 - (C4 * C4)) / C4));

    /// <summary>Mean standard deviation to its upper limit.</summary>
    public double B4 => 1 + (3 * Math.Sqrt(1 - (C4 * C4)) / C4);

    /// <summary>The constants for groups of <paramref name="n"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="n"/> is outside 2 to 25.</exception>
    public static ChartConstants Of(int n)
    {
        if (n is < 2 or > 25)
            throw new ArgumentOutOfRangeException(nameof(n), n, "Values of a group: wanted 2 to 25.");
        double c4 = Math.Sqrt(2.0 / (n - 1)) * Math.Exp(GammaFunction.Log(n / 2.0) - GammaFunction.Log((n - 1) / 2.0));

        // The fault of the sum over the square shrinks with the square of the step, so two steps give a value without its first part.
        (double mean, double coarse) = RangeMoments(n, 80);
        double fine = RangeMoments(n, 160).Square;
        double square = ((4 * fine) - coarse) / 3;
        return new(n, c4, mean, Math.Sqrt(square - (mean * mean)));
    }

    // Mean of the range: ∫ 1 − Φⁿ − (1 − Φ)ⁿ; mean of its square: 2 ∬ over y < x of 1 − Φ(x)ⁿ − (1 − Φ(y))ⁿ + (Φ(x) − Φ(y))ⁿ.
    private static (double Mean, double Square) RangeMoments(int n, int steps)
    {
        double step = 16.0 / steps, mean = 0, square = 0;
        double[] chance = [.. Enumerable.Range(0, steps + 1).Select(i => NormalCurve.Chance(-8 + (i * step)))];
        double[] up = [.. chance.Select(c => Math.Pow(c, n))], down = [.. chance.Select(c => Math.Pow(1 - c, n))];
        for (int i = 0; i <= steps; i++)
        {
            mean += (1 - up[i] - down[i]) * step;
            square += (1 - up[i] - down[i]) * step * step;
            for (int j = 0; j < i; j++)
                square += 2 * (1 - up[i] - down[j] + Math.Pow(chance[i] - chance[j], n)) * step * step;
        }

        return (mean, square);
    }
}
