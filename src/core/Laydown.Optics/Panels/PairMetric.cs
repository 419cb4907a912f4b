using Laydown.Colour.Spaces;

namespace Laydown.Optics.Panels;

/// <summary>Weights of CIEDE2000 frozen at the wanted colour: smooth, so that a search can follow them [Sharma2005].</summary>
internal readonly struct PairMetric
{
    private readonly Lab wish;
    private readonly double byL, byC, byH, cos, sin;

    internal PairMetric(Lab wish, double weight)
    {
        this.wish = wish;
        double l50 = (wish.L - 50) * (wish.L - 50), root = Math.Sqrt(weight);
        byL = root / (1 + (0.015 * l50 / Math.Sqrt(20 + l50)));
        byC = root / (1 + (0.045 * wish.Chroma));
        byH = root / (1 + (0.015 * wish.Chroma));
        (cos, sin) = wish.Chroma > 0 ? (wish.A / wish.Chroma, wish.B / wish.Chroma) : (1, 0);
    }

    /// <summary>Weighted differences of lightness, chroma and hue, and optionally their slopes by X, Y and Z.</summary>
    /// <param name="seen">What is seen.</param>
    /// <param name="white">White of the eye.</param>
    /// <param name="difference">Receives three values.</param>
    /// <param name="slopes">Receives 3 × 3 slopes, or is empty.</param>
    internal void Weigh(Xyz seen, Xyz white, Span<double> difference, Span<double> slopes)
    {
        Lab lab = Lab.From(seen, white);
        Turn(lab.L - wish.L, lab.A - wish.A, lab.B - wish.B, difference);
        if (slopes.Length == 0)
            return;
        Xyz steep = Lab.Steepness(seen, white);
        Span<double> column = stackalloc double[3];
        for (int axis = 0; axis < 3; axis++)
        {
            switch (axis)
            {
                case 0: Turn(0, 500 * steep.X, 0, column); break;
                case 1: Turn(116 * steep.Y, -500 * steep.Y, 200 * steep.Y, column); break;
                default: Turn(0, 0, -200 * steep.Z, column); break;
            }

            for (int row = 0; row < 3; row++)
                slopes[(3 * row) + axis] = column[row];
        }
    }

    private void Turn(double l, double a, double b, Span<double> turned)
    {
        turned[0] = l * byL;
        turned[1] = ((a * cos) + (b * sin)) * byC;
        turned[2] = ((b * cos) - (a * sin)) * byH;
    }
}
