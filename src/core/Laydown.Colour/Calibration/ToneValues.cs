using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Colour.Calibration;

/// <summary>Tone value of a step between stock and full ink, percent: 0 the stock, 100 the full ink.</summary>
public static class ToneValues
{
    /// <summary>Fall of tone from one step to the next that still counts as noise of printing and reading, percent; common practice, no
    /// source.</summary>
    public const double NoisePercent = 2;

    /// <summary>Spot colour tone value: 100 √(Σ(Vt − Vp)² / Σ(Vs − Vp)²), V = 116 f(X / Xn) − 16 for X, Y and Z [ISO20654].</summary>
    /// <param name="step">Colour of the step.</param>
    /// <param name="paper">Colour of the stock, or of the black or clear below a white ink.</param>
    /// <param name="solid">Colour of the full ink.</param>
    /// <exception cref="ArgumentException">Full ink and stock look the same.</exception>
    public static double Sctv(Lab step, Lab paper, Lab solid)
    {
        double whole = Distance(paper, solid);
        if (!(whole > 0))
            throw new ArgumentException("Full ink: found the colour of the stock; wanted another colour.", nameof(solid));
        return 100 * Distance(paper, step) / whole;
    }

    /// <summary>Density above the stock, of the tristimulus value that <paramref name="solid"/> changes most; over 0 for a white on
    /// black too.</summary>
    /// <remarks>A colorimetric stand-in for a filter density: common practice, no source.</remarks>
    public static double DensityOver(Lab step, Lab paper, Lab solid)
    {
        double[] p = Parts(paper), s = Parts(solid), t = Parts(step);
        int most = 0;
        for (int i = 1; i < 3; i++)
            most = Math.Abs(Math.Log10(s[i] / p[i])) > Math.Abs(Math.Log10(s[most] / p[most])) ? i : most;
        return -Math.Log10(t[most] / p[most]) * Math.Sign(Math.Log10(p[most] / s[most]));
    }

    /// <summary>Tone value of every step of a wedge, as an aim counts it.</summary>
    /// <param name="steps">Steps from the stock to what counts as full, at least two.</param>
    /// <param name="aim">What steps are counted in.</param>
    public static double[] Of(IReadOnlyList<WedgeStep> steps, LinearisationAim aim)
    {
        Bounds.Within(steps.Count, 2, int.MaxValue);
        Lab paper = steps[0].Lab, solid = steps[^1].Lab;
        if (!(Distance(paper, solid) > 0))
            return new double[steps.Count];
        double whole = aim == LinearisationAim.ColourDifference ? Ciede2000.Between(paper, solid) : DensityOver(solid, paper, solid);
        return [.. steps.Select(s => aim switch
        {
            LinearisationAim.ToneValue => Sctv(s.Lab, paper, solid),
            LinearisationAim.ColourDifference => 100 * Ciede2000.Between(paper, s.Lab) / whole,
            LinearisationAim.Density => 100 * (1 - Math.Pow(10, -DensityOver(s.Lab, paper, solid))) / (1 - Math.Pow(10, -whole)),
            _ => throw new ArgumentOutOfRangeException(nameof(aim), aim, "Aim: wanted a known aim."),
        })];
    }

    /// <summary>Distance in the three compressed values: the root under the tone value.</summary>
    internal static double Distance(Lab one, Lab other)
    {
        // V of Y is L*; V of X is L* + 0.232 a*, V of Z is L* − 0.58 b*, as a* = 500 (fx − fy) and V = 116 f − 16.
        double y = other.L - one.L;
        double x = y + (116 / 500.0 * (other.A - one.A));
        double z = y - (116 / 200.0 * (other.B - one.B));
        return Math.Sqrt((x * x) + (y * y) + (z * z));
    }

    private static double[] Parts(Lab lab)
    {
        Xyz xyz = lab.ToXyz(ReadingColour.White);
        return [Math.Max(xyz.X, 1e-3), Math.Max(xyz.Y, 1e-3), Math.Max(xyz.Z, 1e-3)];
    }
}
