namespace Laydown.Colour.Fits;

/// <summary>Ink asked for → effective coverage, both 0 to 1: rises steadily, smooth in its first derivative.</summary>
/// <remarks>Cubic pieces between even steps with the slopes of [Fritsch1984], so it never overshoots its values.</remarks>
public sealed class CoverageCurve
{
    private readonly double[] values, slopes;

    /// <summary>A curve through values at even steps.</summary>
    /// <param name="values">At least two values, from 0 to 1, each at least as large as the one before.</param>
    /// <exception cref="ArgumentException">The values do not run from 0 to 1, or fall.</exception>
    public CoverageCurve(IReadOnlyList<double> values)
    {
        if (values.Count < 2 || values[0] != 0 || values[^1] != 1 || values.Zip(values.Skip(1)).Any(p => !(p.Second >= p.First)))
            throw new ArgumentException("Coverage curve: wanted at least two values that rise from 0 to 1.", nameof(values));

        this.values = [.. values];
        slopes = Slopes(this.values);
    }

    /// <summary>Values at even steps.</summary>
    public IReadOnlyList<double> Values => values;

    /// <summary>The straight curve.</summary>
    public static CoverageCurve Straight { get; } = new([0, 1]);

    /// <summary>Effective coverage and its slope; ink outside 0 to 1 counts as the end.</summary>
    public double At(double ink, out double slope)
    {
        int last = values.Length - 1;
        double place = Math.Clamp(ink, 0, 1) * last;
        int step = Math.Min((int)place, last - 1);
        double t = place - step, rise = values[step + 1] - values[step];

        // Hermite's cubic with the value and slope at both ends; slopes are per step.
        double c = (3 * rise) - (2 * slopes[step]) - slopes[step + 1], d = slopes[step] + slopes[step + 1] - (2 * rise);
        slope = (slopes[step] + (t * ((2 * c) + (3 * d * t)))) * last;
        return values[step] + (t * (slopes[step] + (t * (c + (d * t)))));
    }

    /// <summary>Effective coverage.</summary>
    public double At(double ink) => At(ink, out _);

    /// <summary>The least ink that gives a coverage, to 1e-9.</summary>
    public double InkFor(double coverage)
    {
        double low = 0, high = 1;
        for (int halving = 0; halving < 40; halving++)
        {
            double middle = (low + high) / 2;
            (low, high) = At(middle) < coverage ? (middle, high) : (low, middle);
        }

        return coverage <= 0 ? 0 : coverage >= 1 ? 1 : high;
    }

    /// <summary>The curve through ascending points by straight lines, sampled at even steps and made to rise from 0 to 1.</summary>
    /// <param name="inks">Ink, ascending from 0 to 1.</param>
    /// <param name="coverages">Coverage for each.</param>
    /// <param name="steps">Number of steps.</param>
    internal static CoverageCurve Through(IReadOnlyList<double> inks, IReadOnlyList<double> coverages, int steps)
    {
        double[] rising = new double[coverages.Count];
        for (int i = 1; i < rising.Length; i++)
            rising[i] = Math.Clamp(coverages[i], rising[i - 1], 1);
        rising[^1] = 1;

        double[] values = new double[steps + 1], slopes = Slopes(rising, inks);
        for (int step = 1, piece = 0; step < steps; step++)
        {
            double ink = step / (double)steps;
            while (piece < inks.Count - 2 && inks[piece + 1] < ink)
                piece++;
            double width = inks[piece + 1] - inks[piece], t = (ink - inks[piece]) / width, rise = rising[piece + 1] - rising[piece];
            double from = slopes[piece] * width, to = slopes[piece + 1] * width;
            double c = (3 * rise) - (2 * from) - to, d = from + to - (2 * rise);
            values[step] = Math.Clamp(rising[piece] + (t * (from + (t * (c + (d * t))))), values[step - 1], 1);
        }

        values[steps] = 1;
        return new(values);
    }

    private static double[] Slopes(double[] values) => Slopes(values, [.. Enumerable.Range(0, values.Length).Select(i => (double)i)]);

    private static double[] Slopes(double[] values, IReadOnlyList<double> places)
    {
        int last = values.Length - 1;
        double[] slopes = new double[values.Length];
        double Width(int piece) => places[piece + 1] - places[piece];
        double Steep(int piece) => (values[piece + 1] - values[piece]) / Width(piece);
        for (int i = 1; i < last; i++)
        {
            double before = Steep(i - 1), after = Steep(i);
            double heavy = (2 * Width(i)) + Width(i - 1), light = Width(i) + (2 * Width(i - 1));
            slopes[i] = before <= 0 || after <= 0 ? 0 : (heavy + light) / ((heavy / before) + (light / after));
        }

        slopes[0] = last == 1 ? Steep(0) : End(Width(0), Width(1), Steep(0), Steep(1));
        slopes[last] = last == 1 ? Steep(0) : End(Width(last - 1), Width(last - 2), Steep(last - 1), Steep(last - 2));
        return slopes;
    }

    // Three-point slope at an end, kept from overshooting.
    private static double End(double near, double far, double steepNear, double steepFar)
    {
        double slope = ((((2 * near) + far) * steepNear) - (near * steepFar)) / (near + far);
        return slope <= 0 ? 0 : Math.Min(slope, 3 * steepNear);
    }
}
