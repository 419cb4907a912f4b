namespace Laydown.Colour.Spaces;

/// <summary>Chromatic adaptation by CAT16, without the part of a surround [Li2017].</summary>
public static class Cat16
{
    /// <summary>The stimulus that looks, under <paramref name="to"/>, as <paramref name="value"/> looks under
    /// <paramref name="from"/>; both whites with the same Y.</summary>
    /// <param name="value">The stimulus.</param>
    /// <param name="from">White it is seen under.</param>
    /// <param name="to">White of the answer.</param>
    /// <param name="degree">How far the eye adapts: 0 not at all to 1 wholly.</param>
    /// <exception cref="ArgumentException">A white has no response in one of the channels, or the degree is outside 0 to 1.</exception>
    public static Xyz Adapt(Xyz value, Xyz from, Xyz to, double degree = 1)
    {
        Xyz source = Cones(from), target = Cones(to);
        if (!(degree is >= 0 and <= 1))
            throw new ArgumentException(Invariant($"Degree of adaptation {degree}: wanted 0 to 1."), nameof(degree));
        if (!(source.X > 0 && source.Y > 0 && source.Z > 0 && target.X > 0 && target.Y > 0 && target.Z > 0))
            throw new ArgumentException(Invariant($"White points {from} and {to}: wanted responses over 0."), nameof(from));

        Xyz seen = Cones(value);
        double Gain(double white, double wanted) => (degree * wanted / white) + 1 - degree;
        return FromCones(new(seen.X * Gain(source.X, target.X), seen.Y * Gain(source.Y, target.Y), seen.Z * Gain(source.Z, target.Z)));
    }

    private static Xyz Cones(Xyz v) => new(
        (0.401288 * v.X) + (0.650173 * v.Y) - (0.051461 * v.Z),
        (-0.250268 * v.X) + (1.204414 * v.Y) + (0.045854 * v.Z),
        (-0.002079 * v.X) + (0.048952 * v.Y) + (0.953127 * v.Z));

    // The inverse of the matrix above, solved by Cramer's rule so that there and back is exact to rounding.
    private static Xyz FromCones(Xyz c)
    {
        const double a = 0.401288, b = 0.650173, d = -0.051461, e = -0.250268, f = 1.204414, g = 0.045854, h = -0.002079, i = 0.048952, j = 0.953127;
        const double ca = (f * j) - (g * i), cb = (g * h) - (e * j), cc = (e * i) - (f * h);
        const double det = (a * ca) + (b * cb) + (d * cc);
        return new(
            ((ca * c.X) + (((d * i) - (b * j)) * c.Y) + (((b * g) - (d * f)) * c.Z)) / det,
            ((cb * c.X) + (((a * j) - (d * h)) * c.Y) + (((d * e) - (a * g)) * c.Z)) / det,
            ((cc * c.X) + (((b * h) - (a * i)) * c.Y) + (((a * f) - (b * e)) * c.Z)) / det);
    }
}
