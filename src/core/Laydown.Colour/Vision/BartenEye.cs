using Laydown.Measures;

namespace Laydown.Colour.Vision;

/// <summary>The eye and the field it looks at, as the contrast sensitivity of Barten wants them [Barten1999].</summary>
/// <param name="SigmaDegrees">Standard deviation of the eye's line spread, degrees, over 0; 0.00829° for a pupil of 2.1 mm.</param>
/// <param name="Trolands">Light on the retina, Td, over 0.</param>
/// <param name="WidthDegrees">Width of the field, degrees, over 0; 60 for a page that fills the view.</param>
/// <param name="HeightDegrees">Height of the field, degrees, over 0.</param>
public sealed record BartenEye(double SigmaDegrees, double Trolands, double WidthDegrees = 60, double HeightDegrees = 60)
{
    /// <summary>Widest angle over which the eye adds up, degrees.</summary>
    public double WidestDegrees { get; init; } = 12;

    /// <summary>Photons a troland brings, per s · deg² · Td: 1.2274·10⁶ for light of about the colour of paper by day.</summary>
    public double PhotonsPerTroland { get; init; } = 1.2274e6;

    /// <summary>The eye of a grown-up who looks at a field of that luminance.</summary>
    /// <remarks>
    /// Pupil d = 5 − 3 tanh(0.4 log10(L X0 Y0 / 40²)) mm; σ = √(σ0² + (C d)²) with σ0 = 0.5′ and C = 0.08′ a mm;
    /// E = π d²/4 · L · (1 − (d/9.7)² + (d/12.4)⁴), the last factor for light through the rim of the pupil [Barten1999].
    /// </remarks>
    /// <param name="cdPerM2">Luminance of the field, cd/m², 0.0001 to 100 000.</param>
    /// <param name="fieldDegrees">Width and height of the field, degrees, 0.1 to 180.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or outside its range.</exception>
    public static BartenEye For(double cdPerM2, double fieldDegrees = 60)
    {
        double light = Bounds.Within(cdPerM2, 1e-4, 1e5), field = Bounds.Within(fieldDegrees, 0.1, 180);
        double pupilMm = 5 - (3 * Math.Tanh(0.4 * Math.Log10(light * field * field / (40 * 40))));
        return new(SigmaFor(pupilMm), TrolandsFor(light, pupilMm), field, field);
    }

    /// <summary>σ of the line spread for a pupil, degrees.</summary>
    /// <param name="pupilMm">Diameter of the pupil, mm, 1 to 9.</param>
    public static double SigmaFor(double pupilMm) => double.Hypot(0.5 / 60, 0.08 / 60 * Bounds.Within(pupilMm, 1, 9));

    /// <summary>Light on the retina, Td.</summary>
    /// <param name="cdPerM2">Luminance of the field, cd/m².</param>
    /// <param name="pupilMm">Diameter of the pupil, mm, 1 to 9.</param>
    public static double TrolandsFor(double cdPerM2, double pupilMm)
    {
        double d = Bounds.Within(pupilMm, 1, 9);
        return Math.PI * d * d / 4 * cdPerM2 * (1 - Math.Pow(d / 9.7, 2) + Math.Pow(d / 12.4, 4));
    }
}
