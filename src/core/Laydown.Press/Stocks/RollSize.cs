using Laydown.Measures;

namespace Laydown.Press.Stocks;

/// <summary>Size and mass of a roll.</summary>
public static class RollSize
{
    /// <summary>Outer diameter of the core taken where none is given, mm: 76 mm bore and its wall.</summary>
    public const double CoreMm = 89;

    /// <summary>Outer diameter, mm: √(d² + 4 L t / π).</summary>
    /// <param name="coreMm">Diameter over the core, mm.</param>
    /// <param name="lengthM">Length on the roll, m.</param>
    /// <param name="thicknessMm">Thickness, mm.</param>
    public static double OuterDiameterMm(double coreMm, double lengthM, double thicknessMm) =>
        Math.Sqrt(Math.Pow(Bounds.Within(coreMm, 0, 1000), 2)
            + (4 * Bounds.Within(lengthM, 0, 100_000) * 1000 * Bounds.Within(thicknessMm, 0, 100) / Math.PI));

    /// <summary>Mass without core, kg.</summary>
    /// <param name="weightGPerM2">Mass of a square metre, g.</param>
    /// <param name="widthMm">Width, mm.</param>
    /// <param name="lengthM">Length, m.</param>
    public static double MassKg(double weightGPerM2, double widthMm, double lengthM) =>
        Bounds.Within(weightGPerM2, 0, 1e6) / 1000 * Bounds.Within(widthMm, 0, 1e6) / 1000 * Bounds.Within(lengthM, 0, 1e6);
}
