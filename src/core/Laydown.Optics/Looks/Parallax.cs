using Laydown.Measures;
using Laydown.Optics.Layers;

namespace Laydown.Optics.Looks;

/// <summary>What the thickness of a sheet does to pictures on its two faces: they move against each other with the viewer, and light
/// that is
/// spread at one face comes back to it in a halo.</summary>
/// <remarks>The sheet is clear; Snell's law: sin θ' = sin θ / n.</remarks>
public static class Parallax
{
    /// <summary>How far the picture on the far face seems to lie from that on the near face, to a viewer who looks aslant: d·tan
    /// θ'.</summary>
    /// <param name="thicknessMm">Distance of the pictures, mm, 0 to 100: the sheet's thickness, or that of films between them.</param>
    /// <param name="viewingDegrees">Angle of view in air to the normal, degrees, 0 to 89.</param>
    /// <param name="sheet">The sheet's boundary to air.</param>
    /// <returns>mm, along the face.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or outside its range.</exception>
    public static double ShiftMm(double thicknessMm, double viewingDegrees, Boundary sheet)
    {
        Bounds.Within(thicknessMm, 0, 100);
        Bounds.Within(viewingDegrees, 0, 89);
        double sine = Math.Sin(viewingDegrees * Math.PI / 180) / sheet.Index;
        return thicknessMm * sine / Math.Sqrt(1 - (sine * sine));
    }

    /// <summary>Radius within which light that is spread on one face can leave by the other at once: d·tan θ_c; a line on a far face seen
    /// through a diffusing near face blurs by as much.</summary>
    /// <param name="thicknessMm">Thickness, mm, 0 to 100.</param>
    /// <param name="sheet">The sheet's boundary to air, index over 1.</param>
    /// <returns>mm.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or outside its range, or the sheet has the index of air.</exception>
    public static double SpreadRadiusMm(double thicknessMm, Boundary sheet)
    {
        Bounds.Within(thicknessMm, 0, 100);
        double sine = 1 / Bounds.Within(sheet.Index, 1 + 1e-9, 3);
        return thicknessMm * sine / Math.Sqrt(1 - (sine * sine));
    }

    /// <summary>Inner radius of the halo round a bright spot on one face: light from there that the other face reflects wholly comes
    /// back no
    /// nearer than 2d·tan θ_c.</summary>
    /// <param name="thicknessMm">Thickness, mm, 0 to 100.</param>
    /// <param name="sheet">The sheet's boundary to air, index over 1.</param>
    /// <returns>mm.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or outside its range, or the sheet has the index of air.</exception>
    public static double HaloRadiusMm(double thicknessMm, Boundary sheet) => 2 * SpreadRadiusMm(thicknessMm, sheet);

    /// <summary>Whether pictures that must fit each other may lie on both faces, or belong on one.</summary>
    /// <param name="thicknessMm">Thickness of the sheet, mm, 0 to 100.</param>
    /// <param name="viewingDegrees">The most slanting view that counts, degrees, 0 to 89; 30 for people who walk past.</param>
    /// <param name="toleranceMm">How far the pictures may lie apart, mm, over 0.</param>
    /// <param name="sheet">The sheet's boundary to air.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or outside its range.</exception>
    public static FaceAdvice Advise(double thicknessMm, double viewingDegrees, double toleranceMm, Boundary sheet)
    {
        Bounds.Within(toleranceMm, 1e-6, 1000);
        double shift = ShiftMm(thicknessMm, viewingDegrees, sheet), halo = HaloRadiusMm(thicknessMm, sheet);
        return new(shift <= toleranceMm, shift, halo, ThickestMm(viewingDegrees, toleranceMm, sheet));
    }

    private static double ThickestMm(double viewingDegrees, double toleranceMm, Boundary sheet)
    {
        double shiftOfOne = ShiftMm(1, viewingDegrees, sheet);
        return shiftOfOne * 100 <= toleranceMm ? 100 : toleranceMm / shiftOfOne;
    }
}
