using Laydown.Measures;

namespace Laydown.Press.Stocks;

/// <summary>How much longer a sheet becomes when it warms.</summary>
public static class Growth
{
    /// <summary>Growth over a length, mm: α L ΔT.</summary>
    /// <param name="lengthMm">Length, mm.</param>
    /// <param name="growthPpmPerK">Thermal growth, 10⁻⁶/K.</param>
    /// <param name="warmerK">Difference of temperature, K, −200 to 200.</param>
    public static double OfLengthMm(double lengthMm, double growthPpmPerK, double warmerK) =>
        Bounds.Within(lengthMm, 0, 1e7) * Bounds.Within(growthPpmPerK, -1000, 1000) * 1e-6 * Bounds.Within(warmerK, -200, 200);
}
