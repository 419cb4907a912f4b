namespace Laydown.Plan.Log;

/// <summary>Student's t: how far a value may lie from a mean whose spread was itself estimated.</summary>
public static class StudentT
{
    /// <summary>Chance of a value up to <paramref name="t"/>, 0 to 1.</summary>
    /// <param name="t">The value, in units of the estimated spread.</param>
    /// <param name="freedom">Degrees of freedom, over 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Degrees of freedom not over 0.</exception>
    public static double Chance(double t, double freedom)
    {
        if (!(freedom > 0))
            throw new ArgumentOutOfRangeException(nameof(freedom), freedom, "Degrees of freedom: wanted over 0.");
        double tail = GammaFunction.BetaShare(freedom / (freedom + (t * t)), freedom / 2, 0.5) / 2;
        return t > 0 ? 1 - tail : tail;
    }

    /// <summary>The value that is not passed with the chance <paramref name="chance"/>.</summary>
    /// <param name="chance">Over 0 and under 1.</param>
    /// <param name="freedom">Degrees of freedom, at least 0.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">A chance of 0 or 1 or beyond, or degrees of freedom under 0.5.</exception>
    public static double Value(double chance, double freedom)
    {
        if (chance is not (> 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(chance), chance, "Chance: wanted over 0 and under 1.");
        if (!(freedom >= 0.5))
            throw new ArgumentOutOfRangeException(nameof(freedom), freedom, "Degrees of freedom: wanted 0.5 or more.");
        if (chance < 0.5)
            return -Value(1 - chance, freedom);

        // Double a bound until the value lies under it, then halve the span until it no longer changes.
        double low = 0, high = 1;
        while (Chance(high, freedom) < chance)
            high *= 2;
        for (int i = 0; i < 200 && high - low > 1e-14 * high; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = Chance(middle, freedom) < chance ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }
}
