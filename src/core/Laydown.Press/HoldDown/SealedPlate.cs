using Laydown.Measures;

namespace Laydown.Press.HoldDown;

/// <summary>A sheet whose four edges lie on the belt and seal, under even pressure: how far its middle comes down.</summary>
/// <remarks>
/// Plate simply supported on four sides: w = a p b⁴ / D, b the shorter side; a by Navier's double sine series, which meets the table of plates in [RoarkYoung]
/// within its rounding. Bent both ways a plate is stiffer than the strip along its longer side: a dome comes down later than that strip says.
/// </remarks>
public static class SealedPlate
{
    // The terms fall with the fifth power: what is left out after them is below one part in ten thousand.
    private const int Terms = 41;

    // From here on longer sides change nothing: the strip across the shorter side, 5/384.
    private const double Endless = 10;

    /// <summary>Factor a of the middle's deflection, 0.00406 of a square to 0.01302 of an endless strip.</summary>
    /// <param name="sides">Longer side over shorter, 1 or more.</param>
    public static double Factor(double sides)
    {
        double ratio = Math.Min(Bounds.Within(sides, 1, 1e6), Endless), sum = 0;
        for (int m = 1; m <= Terms; m += 2)
            for (int n = 1; n <= Terms; n += 2)
                sum += ((m + n) / 2 % 2 == 1 ? 1 : -1) / (m * n * Math.Pow((m * m / (ratio * ratio)) + (n * n), 2));
        return 16 / Math.Pow(Math.PI, 6) * sum;
    }

    /// <summary>Deflection of the middle, mm; the plate is taken to stay linear.</summary>
    /// <param name="stiffnessNm">D, N·m, over 0.</param>
    /// <param name="widthMm">One side, mm, over 0.</param>
    /// <param name="lengthMm">The other side, mm, over 0.</param>
    /// <param name="pressurePa">Pressure p, Pa, not negative.</param>
    public static double MiddleMm(double stiffnessNm, double widthMm, double lengthMm, double pressurePa)
    {
        double d = Bounds.Within(stiffnessNm, 1e-9, 1e9), b = Math.Min(Bounds.Within(widthMm, 1, 1e6), Bounds.Within(lengthMm, 1, 1e6));
        return Factor(Math.Max(widthMm, lengthMm) / b) * Bounds.Within(pressurePa, 0, 1e9) * Math.Pow(b / 1000, 4) / d * 1000;
    }

    /// <summary>Pressure that brings the middle down by a height, Pa.</summary>
    /// <param name="stiffnessNm">D, N·m, over 0.</param>
    /// <param name="widthMm">One side, mm, over 0.</param>
    /// <param name="lengthMm">The other side, mm, over 0.</param>
    /// <param name="heightMm">Height of the middle over the belt, mm, not negative.</param>
    public static double PressurePa(double stiffnessNm, double widthMm, double lengthMm, double heightMm) =>
        Bounds.Within(heightMm, 0, 1e6) / MiddleMm(stiffnessNm, widthMm, lengthMm, 1);
}
