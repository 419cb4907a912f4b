namespace Laydown.Colour.Curves;

/// <summary>Ink asked for → effective coverage, both 0 to 1: rises steadily, smooth in its first derivative.</summary>
/// <remarks>A <see cref="MonotoneCurve"/> on even steps, so that its cell is found without a search, and with its slope.</remarks>
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
        slopes = MonotoneCurve.Slopes([.. Enumerable.Range(0, values.Count).Select(i => (double)i)], this.values);
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

    /// <summary>The smooth curve through ascending points, made to rise from 0 to 1 and sampled at even steps.</summary>
    /// <param name="inks">Ink, ascending from 0 to 1.</param>
    /// <param name="coverages">Coverage for each.</param>
    /// <param name="steps">Number of steps.</param>
    internal static CoverageCurve Through(IReadOnlyList<double> inks, IReadOnlyList<double> coverages, int steps)
    {
        double[] rising = new double[coverages.Count];
        for (int i = 1; i < rising.Length; i++)
            rising[i] = Math.Clamp(coverages[i], rising[i - 1], 1);
        rising[^1] = 1;

        MonotoneCurve curve = new(inks, rising);
        double[] values = new double[steps + 1];
        for (int step = 1; step < steps; step++)
            values[step] = Math.Clamp(curve.At(step / (double)steps), values[step - 1], 1);
        values[steps] = 1;
        return new(values);
    }
}
