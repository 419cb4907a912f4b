namespace Laydown.Plan.Log;

/// <summary>The gamma function and what follows from it, for the curves behind intervals and charts.</summary>
public static class GammaFunction
{
    // Coefficients of Lanczos' series for g = 7 with nine terms, from memory; held by the tests to the factorials.
    private static readonly double[] Series =
    [
        0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
        12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
    ];

    /// <summary>ln Γ(x). [Lanczos1964]</summary>
    /// <param name="x">Over 0.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is not over 0.</exception>
    public static double Log(double x)
    {
        if (!(x > 0))
            throw new ArgumentOutOfRangeException(nameof(x), x, "Logarithm of the gamma function: wanted over 0.");
        if (x < 0.5)
            return Math.Log(Math.PI / Math.Sin(Math.PI * x)) - Log(1 - x);
        double at = x - 1, sum = Series[0];
        for (int i = 1; i < Series.Length; i++)
            sum += Series[i] / (at + i);
        double t = at + 7.5;
        return (0.5 * Math.Log(2 * Math.PI)) + ((at + 0.5) * Math.Log(t)) - t + Math.Log(sum);
    }

    /// <summary>The share of the beta function up to <paramref name="x"/>, 0 to 1, by its continued fraction.</summary>
    /// <param name="x">0 to 1.</param>
    /// <param name="a">Over 0.</param>
    /// <param name="b">Over 0.</param>
    public static double BetaShare(double x, double a, double b)
    {
        if (x <= 0 || x >= 1)
            return x <= 0 ? 0 : 1;

        // The fraction converges fast on this side of the mean only; the other side is its complement.
        if (x > (a + 1) / (a + b + 2))
            return 1 - BetaShare(1 - x, b, a);
        double front = Math.Exp(Log(a + b) - Log(a) - Log(b) + (a * Math.Log(x)) + (b * Math.Log(1 - x)));
        return front / a * Fraction(x, a, b);
    }

    // Evaluated from the front, term by term, until a term changes nothing.
    private static double Fraction(double x, double a, double b)
    {
        const double tiny = 1e-300;
        double c = 1, d = 1 / NonZero(1 - ((a + b) * x / (a + 1))), value = d;
        for (int m = 1; m <= 1000; m++)
        {
            double even = m * (b - m) * x / ((a + (2 * m) - 1) * (a + (2 * m)));
            double odd = -(a + m) * (a + b + m) * x / ((a + (2 * m)) * (a + (2 * m) + 1));
            d = 1 / NonZero(1 + (even * d));
            c = NonZero(1 + (even / c));
            value *= d * c;
            d = 1 / NonZero(1 + (odd * d));
            c = NonZero(1 + (odd / c));
            value *= d * c;
            if (Math.Abs((d * c) - 1) < 1e-15)
                break;
        }

        return value;

        static double NonZero(double v) => Math.Abs(v) < tiny ? tiny : v;
    }
}
