using System.Numerics;

namespace Laydown.Raster.Screens;

/// <summary>What is left of dots for an eye: V(ρ) = exp(−kρ), k = π S ÷ (180 (0.525 ln L + 3.91)), ρ in cycles for each px.
/// [Nasanen1984]</summary>
/// <remarks>S is resolution (dots an inch) × viewing distance (inches); L = 11 cd/m². The form as the halftoning literature uses it
/// [Jiang2023].</remarks>
internal static class EyeFilter
{
    /// <summary>Root mean square of the filtered difference between dots and tone.</summary>
    /// <param name="dots">A square of dots, 0 to 1, taken as repeating.</param>
    /// <param name="side">Its side, px, a power of two.</param>
    /// <param name="tone">What they stand for.</param>
    /// <param name="scale">S: 2000 is near, 11 340 is 0.4 m at 720 dpi.</param>
    public static double RmsError(ReadOnlySpan<double> dots, int side, double tone, double scale)
    {
        Complex[] values = new Complex[side * side];
        for (int at = 0; at < values.Length; at++)
            values[at] = dots[at] - tone;
        Fourier.Transform(values, side);
        double k = Math.PI * scale / (180 * ((0.525 * Math.Log(11)) + 3.91)), sum = 0;
        for (int at = 0; at < values.Length; at++)
        {
            double y = Math.Min(at / side, side - (at / side)), x = Math.Min(at % side, side - (at % side));
            double seen = Math.Exp(-k * Math.Sqrt((x * x) + (y * y)) / side);
            sum += ((values[at].Real * values[at].Real) + (values[at].Imaginary * values[at].Imaginary)) * seen * seen;
        }

        return Math.Sqrt(sum) / values.Length;
    }
}
