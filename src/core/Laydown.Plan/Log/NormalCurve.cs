namespace Laydown.Plan.Log;

/// <summary>The normal curve with mean 0 and spread 1.</summary>
public static class NormalCurve
{
    /// <summary>Chance of a value up to <paramref name="z"/>, by the series around 0; 0 or 1 beyond 8. [Marsaglia2004]</summary>
    public static double Chance(double z)
    {
        if (Math.Abs(z) > 8)
            return z < 0 ? 0 : 1;
        double sum = z, term = z;
        for (int i = 3; Math.Abs(term) > 1e-18 && i < 400; i += 2)
        {
            term *= z * z / i;
            sum += term;
        }

        return Math.Clamp(0.5 + (sum * Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI)), 0, 1);
    }
}
