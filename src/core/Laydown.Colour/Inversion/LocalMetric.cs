using Laydown.Colour.Spaces;

namespace Laydown.Colour.Inversion;

/// <summary>The weights of CIEDE2000 frozen at one colour: smooth everywhere, unlike the difference itself.</summary>
/// <remarks>
/// Chroma counts up to 30 in the weights: beyond, S_C would make chroma so cheap that bright colours outside the gamut turn pale.
/// Lightness then weighs about twice as much as chroma (common practice, no source). Inside the gamut the weights change nothing.
/// </remarks>
internal readonly struct LocalMetric
{
    private const double MostChroma = 30;
    private readonly Lab centre;
    private readonly double byL, byC, byH, cos, sin;

    internal LocalMetric(Lab centre)
    {
        this.centre = centre;
        double l50 = (centre.L - 50) * (centre.L - 50);
        byL = 1 / (1 + (0.015 * l50 / Math.Sqrt(20 + l50)));
        double chroma = Math.Min(centre.Chroma, MostChroma);
        byC = 1 / (1 + (0.045 * chroma));
        byH = 1 / (1 + (0.015 * chroma));
        (cos, sin) = centre.Chroma > 0 ? (centre.A / centre.Chroma, centre.B / centre.Chroma) : (1, 0);
    }

    /// <summary>Weighted differences of lightness, chroma and hue of a colour from the centre.</summary>
    internal void Weigh(Lab colour, Span<double> difference) =>
        WeighStep(colour.L - centre.L, colour.A - centre.A, colour.B - centre.B, difference);

    /// <summary>Weighted parts of a step in Lab.</summary>
    internal void WeighStep(double l, double a, double b, Span<double> step)
    {
        step[0] = l * byL;
        step[1] = ((a * cos) + (b * sin)) * byC;
        step[2] = ((b * cos) - (a * sin)) * byH;
    }
}
