using Laydown.Measures;

namespace Laydown.Press.HoldDown;

/// <summary>A sheet bowed upwards in its middle, pressed on a flat belt: its edges stand, its middle lies, a hump is left before each edge.</summary>
/// <remarks>
/// Natural curvature k₀ towards the belt, stiffness D, pressure p. Between the edge, which carries no moment, and the part that lies flat the hump is
/// c = 2 √(D k₀ / p) long and h = 9 D k₀² / (128 p) high. Classical beam theory, derived here; the tests hold it against a discrete energy minimisation.
/// </remarks>
/// <param name="StripMm">Length of the hump from the edge, mm.</param>
/// <param name="HumpMm">Height of the hump, mm; where the middle does not come down, the bow that is left.</param>
public sealed record PressedDome(double StripMm, double HumpMm)
{
    /// <summary>Solves the dome.</summary>
    /// <param name="stiffnessNm">D, N·m, not negative.</param>
    /// <param name="curvaturePerM">Natural curvature k₀, 1/m, not negative.</param>
    /// <param name="lengthMm">Length, mm, over 0.</param>
    /// <param name="pressurePa">Pressure p, Pa, over 0.</param>
    public static PressedDome OfCurvature(double stiffnessNm, double curvaturePerM, double lengthMm, double pressurePa)
    {
        double d = Bounds.Within(stiffnessNm, 0, 1e9), k = Bounds.Within(curvaturePerM, 0, 1000), p = Bounds.Within(pressurePa, 1e-6, 1e9);
        double stripM = 2 * Math.Sqrt(d * k / p), lengthM = Bounds.Within(lengthMm, 1, 1e6) / 1000;
        if (stripM < lengthM / 2)
            return new(stripM * 1000, 9 * d * k * k / (128 * p) * 1000);

        // The middle does not lie: the bow less what the pressure bends a beam on its two edges. In between it just touches; the larger of the two is on the safe side.
        double left = d > 0 ? (k * lengthM * lengthM / 8) - (5 * p * Math.Pow(lengthM, 4) / (384 * d)) : 0;
        return new(lengthM / 2 * 1000, Math.Max(left, Math.Min(9 * d * k * k / (128 * p), k * lengthM * lengthM / 8)) * 1000);
    }
}
