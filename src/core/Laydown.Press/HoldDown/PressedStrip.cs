using Laydown.Measures;

namespace Laydown.Press.HoldDown;

/// <summary>A bowed sheet pressed on a flat belt: it lies flat but for a strip at each free end.</summary>
/// <remarks>
/// Natural curvature k₀ = 8 b / L², stiffness D, pressure p: the lifted strip is c = √(2 D k₀ / p) long and its edge stands
/// h = D k₀² / (2 p) high. Classical beam theory, derived here; the tests hold it against a discrete energy minimisation.
/// </remarks>
/// <param name="CurvaturePerM">Natural curvature, 1/m.</param>
/// <param name="StripMm">Length of the lifted strip, mm.</param>
/// <param name="LiftMm">Height of the lifted edge, mm; never more than the natural bow.</param>
public sealed record PressedStrip(double CurvaturePerM, double StripMm, double LiftMm)
{
    /// <summary>Solves the strip.</summary>
    /// <param name="stiffnessNm">D, N·m, not negative.</param>
    /// <param name="bowMm">Bow b over the length, mm, not negative.</param>
    /// <param name="lengthMm">Length L, mm, over 0.</param>
    /// <param name="pressurePa">Pressure p, own weight or vacuum, Pa, over 0.</param>
    public static PressedStrip Of(double stiffnessNm, double bowMm, double lengthMm, double pressurePa)
    {
        double curvature = 8 * Bounds.Within(bowMm, 0, 10_000) / 1000 / Math.Pow(Bounds.Within(lengthMm, 1, 1e6) / 1000, 2);
        return OfCurvature(stiffnessNm, curvature, lengthMm, pressurePa);
    }

    /// <summary>As above, from the curvature.</summary>
    /// <param name="stiffnessNm">D, N·m, not negative.</param>
    /// <param name="curvaturePerM">Natural curvature k₀, 1/m, not negative.</param>
    /// <param name="lengthMm">Length L, mm, over 0.</param>
    /// <param name="pressurePa">Pressure p, Pa, over 0.</param>
    public static PressedStrip OfCurvature(double stiffnessNm, double curvaturePerM, double lengthMm, double pressurePa)
    {
        Bounds.Within(stiffnessNm, 0, 1e9);
        Bounds.Within(curvaturePerM, 0, 1000);
        double stripM = Math.Sqrt(2 * stiffnessNm * curvaturePerM / Bounds.Within(pressurePa, 1e-6, 1e9));
        double halfM = Bounds.Within(lengthMm, 1, 1e6) / 2000;
        double liftMm = stiffnessNm * curvaturePerM * curvaturePerM / (2 * pressurePa) * 1000;

        // A strip longer than half the sheet means that nothing holds it flat: it keeps its natural bow.
        return stripM < halfM
            ? new(curvaturePerM, stripM * 1000, liftMm)
            : new(curvaturePerM, halfM * 1000, Math.Min(liftMm, curvaturePerM * halfM * halfM / 2 * 1000));
    }
}
