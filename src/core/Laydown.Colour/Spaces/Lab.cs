namespace Laydown.Colour.Spaces;

/// <summary>CIELAB 1976 [CIE15].</summary>
/// <param name="L">Lightness, 0 black to 100 the adopted white; more for anything brighter.</param>
/// <param name="A">Green (negative) to red.</param>
/// <param name="B">Blue (negative) to yellow.</param>
/// <remarks><c>default</c> is black. Formulas use the exact fractions 6/29 and 4/29.</remarks>
public readonly record struct Lab(double L, double A, double B)
{
    private const double Knee = 6.0 / 29.0;

    /// <summary>Chroma C*ab.</summary>
    public double Chroma => Math.Sqrt((A * A) + (B * B));

    /// <summary>The colour of <paramref name="value"/> to an eye adapted to <paramref name="white"/>; both in the same scale.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The white has a value not over 0.</exception>
    public static Lab From(Xyz value, Xyz white)
    {
        if (!(white.X > 0 && white.Y > 0 && white.Z > 0))
            throw new ArgumentOutOfRangeException(nameof(white), white, "White point: wanted all values over 0.");

        double x = Compress(value.X / white.X);
        double y = Compress(value.Y / white.Y);
        double z = Compress(value.Z / white.Z);
        return new((116 * y) - 16, 500 * (x - y), 200 * (y - z));
    }

    /// <summary>The tristimulus values behind the colour, in the scale of <paramref name="white"/>.</summary>
    public Xyz ToXyz(Xyz white)
    {
        double y = (L + 16) / 116;
        return new(white.X * Expand(y + (A / 500)), white.Y * Expand(y), white.Z * Expand(y - (B / 200)));
    }

    /// <summary>How steeply the three compressed ratios behind L*, a*, b* rise with X, Y and Z.</summary>
    /// <remarks>With these, a small change dX, dY, dZ moves L* by 116·Y·dY, a* by 500·(X·dX − Y·dY) and b* by 200·(Y·dY −
    /// Z·dZ).</remarks>
    public static Xyz Steepness(Xyz value, Xyz white) => new(
        CompressSlope(value.X / white.X) / white.X, CompressSlope(value.Y / white.Y) / white.Y, CompressSlope(value.Z / white.Z) / white.Z);

    private static double CompressSlope(double ratio)
    {
        if (ratio <= Knee * Knee * Knee)
            return 1 / (3 * Knee * Knee);
        double root = Math.Cbrt(ratio);
        return 1 / (3 * root * root);
    }

    private static double Compress(double ratio) =>
        ratio > Knee * Knee * Knee ? Math.Cbrt(ratio) : (ratio / (3 * Knee * Knee)) + (4.0 / 29.0);

    private static double Expand(double root) => root > Knee ? root * root * root : 3 * Knee * Knee * (root - (4.0 / 29.0));
}
