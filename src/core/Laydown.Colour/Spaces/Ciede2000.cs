namespace Laydown.Colour.Spaces;

/// <summary>The CIEDE2000 colour difference with unit factors [Sharma2005].</summary>
public static class Ciede2000
{
    private const double Degree = Math.PI / 180;
    private static readonly double Pow25To7 = Math.Pow(25, 7);

    /// <summary>ΔE00 of two colours seen to the same white; 0 for equal colours, the same both ways round.</summary>
    public static double Between(Lab one, Lab other)
    {
        // Stretch a* so that near-neutral colours are judged as the eye judges them.
        double meanChroma7 = Math.Pow((one.Chroma + other.Chroma) / 2, 7);
        double stretch = 1.5 - (0.5 * Math.Sqrt(meanChroma7 / (meanChroma7 + Pow25To7)));
        double c1 = Math.Sqrt((stretch * one.A * stretch * one.A) + (one.B * one.B));
        double c2 = Math.Sqrt((stretch * other.A * stretch * other.A) + (other.B * other.B));
        double h1 = HueDegrees(stretch * one.A, one.B);
        double h2 = HueDegrees(stretch * other.A, other.B);

        // Differences of lightness, chroma and hue.
        double dl = other.L - one.L;
        double dc = c2 - c1;
        double hueStep = c1 * c2 == 0 ? 0 : HueStep(h1, h2);
        double dh = 2 * Math.Sqrt(c1 * c2) * Math.Sin(hueStep / 2 * Degree);

        return Weigh(dl, dc, dh, (one.L + other.L) / 2, (c1 + c2) / 2, c1 * c2 == 0 ? h1 + h2 : MeanHue(h1, h2));
    }

    private static double Weigh(double dl, double dc, double dh, double meanL, double meanC, double meanH)
    {
        double t = 1 - (0.17 * Math.Cos((meanH - 30) * Degree)) + (0.24 * Math.Cos(2 * meanH * Degree))
            + (0.32 * Math.Cos(((3 * meanH) + 6) * Degree)) - (0.20 * Math.Cos(((4 * meanH) - 63) * Degree));
        double l50 = (meanL - 50) * (meanL - 50);
        double sl = 1 + (0.015 * l50 / Math.Sqrt(20 + l50));
        double sc = 1 + (0.045 * meanC);
        double sh = 1 + (0.015 * meanC * t);

        // In the blue, chroma and hue differences turn into each other.
        double c7 = Math.Pow(meanC, 7);
        double turn = 30 * Math.Exp(-Math.Pow((meanH - 275) / 25, 2));
        double rt = -Math.Sin(2 * turn * Degree) * 2 * Math.Sqrt(c7 / (c7 + Pow25To7));

        double l = dl / sl, c = dc / sc, h = dh / sh;
        return Math.Sqrt(Math.Max(0, (l * l) + (c * c) + (h * h) + (rt * c * h)));
    }

    private static double HueDegrees(double a, double b)
    {
        if (a == 0 && b == 0)
            return 0;
        double degrees = Math.Atan2(b, a) / Degree;
        return degrees < 0 ? degrees + 360 : degrees;
    }

    // A step of 180° may come out a hair over it by rounding: the printed pair 14 wants it taken as 180°.
    private static bool WithinHalfTurn(double h1, double h2) => Math.Abs(h1 - h2) <= 180 + 1e-9;

    private static double HueStep(double h1, double h2) =>
        WithinHalfTurn(h1, h2) ? h2 - h1 : h2 > h1 ? h2 - h1 - 360 : h2 - h1 + 360;

    private static double MeanHue(double h1, double h2) =>
        WithinHalfTurn(h1, h2) ? (h1 + h2) / 2 : h1 + h2 < 360 ? (h1 + h2 + 360) / 2 : (h1 + h2 - 360) / 2;
}
