using Laydown.Measures;

namespace Laydown.Press.HoldDown;

/// <summary>Bend of a sheet by ink that shrinks as it cures: edges rise towards the printed side.</summary>
/// <remarks>Film thin against the sheet, [Stoney1909]: k = 6 E_f t_f ε / (E_s t_s²). What is taken of the ink is an own assumption that nobody measured.</remarks>
public static class InkShrinkage
{
    /// <summary>Modulus taken of cured ink, GPa.</summary>
    public const double InkGpaTaken = 1.5;

    /// <summary>Shrinkage along the sheet taken, as a share of the length; what is left after the ink has flowed.</summary>
    public const double StrainTaken = 0.01;

    /// <summary>Curvature, 1/m.</summary>
    /// <param name="sheetGpa">Modulus of the sheet E_s, GPa; 0 (a roll) gives 0.</param>
    /// <param name="sheetMm">Thickness of the sheet t_s, mm, over 0.</param>
    /// <param name="inkUm">Thickness of the ink t_f, µm.</param>
    /// <param name="inkGpa">Modulus of the ink E_f, GPa.</param>
    /// <param name="strain">Shrinkage ε, 0 to 1.</param>
    public static double CurvaturePerM(double sheetGpa, double sheetMm, double inkUm, double inkGpa = InkGpaTaken, double strain = StrainTaken) =>
        sheetGpa <= 0 ? 0 : 6 * Bounds.Within(inkGpa, 0, 1000) * Bounds.Within(inkUm, 0, 10_000) * 1e-6 * Bounds.Within(strain, 0, 1)
            / (Bounds.Within(sheetGpa, 0, 1000) * Math.Pow(Bounds.Within(sheetMm, 0.001, 200) / 1000, 2));

    /// <summary>Bow of a free sheet over a length, mm: k L² / 8.</summary>
    /// <param name="curvaturePerM">Curvature, 1/m.</param>
    /// <param name="lengthMm">Length, mm.</param>
    public static double BowMm(double curvaturePerM, double lengthMm) => curvaturePerM * Math.Pow(Bounds.Within(lengthMm, 0, 1e6) / 1000, 2) / 8 * 1000;
}
