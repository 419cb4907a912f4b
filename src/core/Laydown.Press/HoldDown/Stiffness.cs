using Laydown.Measures;

namespace Laydown.Press.HoldDown;

/// <summary>Stiffness of sheets in bending.</summary>
public static class Stiffness
{
    /// <summary>Poisson's ratio taken where a stock gives none: a high one, so that the stiffness and with it the lift errs on the safe side.</summary>
    public const double PoissonTaken = 0.37;

    /// <summary>Bending stiffness of a strip of unit width: D = E t³ / (12 (1 − ν²)), N·m.</summary>
    /// <param name="youngGpa">Young's modulus, GPa, 0 to 1000.</param>
    /// <param name="thicknessMm">Thickness, mm, 0 to 200.</param>
    /// <param name="poisson">Poisson's ratio, 0 to 0.5.</param>
    public static double PlateNm(double youngGpa, double thicknessMm, double poisson = PoissonTaken) =>
        Bounds.Within(youngGpa, 0, 1000) * Math.Pow(Bounds.Within(thicknessMm, 0, 200), 3) / (12 * (1 - (Bounds.Within(poisson, 0, 0.5) * poisson)));

    /// <summary>Modulus of a plain sheet that bends as a sandwich with two stiff skins: E = E_skin (1 − (c/t)³), GPa.</summary>
    /// <remarks>The core counts for nothing in bending and does not shear.</remarks>
    /// <param name="skinGpa">Modulus of the skins, GPa.</param>
    /// <param name="skinMm">Thickness of one skin, mm, at most half of the whole.</param>
    /// <param name="thicknessMm">Whole thickness, mm, over 0.</param>
    public static double SandwichGpa(double skinGpa, double skinMm, double thicknessMm)
    {
        Bounds.Within(thicknessMm, 0.001, 200);
        double core = (thicknessMm - (2 * Bounds.Within(skinMm, 0, thicknessMm / 2))) / thicknessMm;
        return Bounds.Within(skinGpa, 0, 1000) * (1 - (core * core * core));
    }
}
