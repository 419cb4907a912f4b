namespace Laydown.Colour.Spaces;

/// <summary>Chromatic adaptation by the linear Bradford transform, as ICC profiles use it [ICC1].</summary>
public static class Bradford
{
    /// <summary>The stimulus that looks, under <paramref name="to"/>, as <paramref name="value"/> looks under
    /// <paramref name="from"/>.</summary>
    /// <exception cref="ArgumentException">A white has no response in one of the cone channels.</exception>
    public static Xyz Adapt(Xyz value, Xyz from, Xyz to)
    {
        Xyz source = Cones(from);
        Xyz target = Cones(to);
        if (!(source.X > 0 && source.Y > 0 && source.Z > 0 && target.X > 0 && target.Y > 0 && target.Z > 0))
            throw new ArgumentException(Invariant($"White points {from} and {to}: wanted cone responses over 0."), nameof(from));

        Xyz seen = Cones(value);
        return FromCones(new(seen.X * target.X / source.X, seen.Y * target.Y / source.Y, seen.Z * target.Z / source.Z));
    }

    private static Xyz Cones(Xyz v) => new(
        (0.8951 * v.X) + (0.2664 * v.Y) - (0.1614 * v.Z),
        (-0.7502 * v.X) + (1.7135 * v.Y) + (0.0367 * v.Z),
        (0.0389 * v.X) - (0.0685 * v.Y) + (1.0296 * v.Z));

    // The inverse of the matrix above, solved by Cramer's rule so that there and back is exact to rounding.
    private static Xyz FromCones(Xyz c)
    {
        const double a = 0.8951, b = 0.2664, d = -0.1614, e = -0.7502, f = 1.7135, g = 0.0367, h = 0.0389, i = -0.0685, j = 1.0296;
        const double ca = (f * j) - (g * i), cb = (g * h) - (e * j), cc = (e * i) - (f * h);
        const double det = (a * ca) + (b * cb) + (d * cc);
        return new(
            ((ca * c.X) + (((d * i) - (b * j)) * c.Y) + (((b * g) - (d * f)) * c.Z)) / det,
            ((cb * c.X) + (((a * j) - (d * h)) * c.Y) + (((d * e) - (a * g)) * c.Z)) / det,
            ((cc * c.X) + (((b * h) - (a * i)) * c.Y) + (((a * f) - (b * e)) * c.Z)) / det);
    }
}
