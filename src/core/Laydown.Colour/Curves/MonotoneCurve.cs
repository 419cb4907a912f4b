using Laydown.Measures;

namespace Laydown.Colour.Curves;

/// <summary>A smooth curve through points that never falls where they do not: piecewise cubic with harmonic-mean slopes
/// [Fritsch1984].</summary>
public sealed class MonotoneCurve
{
    private readonly double[] x;
    private readonly double[] y;
    private readonly double[] slope;

    /// <summary>The curve through points.</summary>
    /// <param name="x">Places, strictly ascending, at least two.</param>
    /// <param name="y">Values, one for each place; need not rise.</param>
    /// <exception cref="ArgumentException">The places do not rise, or a number is not finite.</exception>
    public MonotoneCurve(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        Bounds.Within(x.Count, 2, int.MaxValue);
        if (x.Count != y.Count || x.Concat(y).Any(v => !double.IsFinite(v)))
            throw new ArgumentException(Invariant($"Values: found {y.Count}; wanted {x.Count} finite numbers."), nameof(y));
        for (int i = 1; i < x.Count; i++)
        {
            if (!(x[i] > x[i - 1]))
                throw new ArgumentException(Invariant($"Places: found {x[i]} after {x[i - 1]}; wanted ascending places."), nameof(x));
        }

        this.x = [.. x];
        this.y = [.. y];
        slope = Slopes(this.x, this.y);
    }

    /// <summary>Value at a place; beyond the ends, the value at the end.</summary>
    public double At(double place)
    {
        if (!(place > x[0]))
            return y[0];
        if (place >= x[^1])
            return y[^1];
        int k = Array.BinarySearch(x, place);
        k = k >= 0 ? k : ~k - 1;
        double h = x[k + 1] - x[k], t = (place - x[k]) / h, u = 1 - t;
        return (y[k] * u * u * (1 + (2 * t))) + (y[k + 1] * t * t * (3 - (2 * t))) + (h * t * u * ((slope[k] * u) - (slope[k + 1] * t)));
    }

    /// <summary>The first place where a curve that never falls reaches a value, to 1e-12 of its width.</summary>
    /// <param name="value">Value; outside the curve's values gives the nearer end.</param>
    public double Inverse(double value)
    {
        double low = x[0], high = x[^1];
        for (int turn = 0; turn < 48; turn++)
        {
            double middle = (low + high) / 2;
            if (At(middle) >= value)
                high = middle;
            else
                low = middle;
        }

        return high;
    }

    /// <summary>Slopes at points: no piece between two of them overshoots.</summary>
    internal static double[] Slopes(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        int last = x.Length - 1;
        double[] h = new double[last], secant = new double[last], slopes = new double[last + 1];
        for (int i = 0; i < last; i++)
            (h[i], secant[i]) = (x[i + 1] - x[i], (y[i + 1] - y[i]) / (x[i + 1] - x[i]));
        for (int i = 1; i < last; i++)
        {
            double first = (2 * h[i]) + h[i - 1], second = h[i] + (2 * h[i - 1]);
            slopes[i] = secant[i - 1] * secant[i] <= 0 ? 0 : (first + second) / ((first / secant[i - 1]) + (second / secant[i]));
        }

        slopes[0] = last == 1 ? secant[0] : End(h[0], h[1], secant[0], secant[1]);
        slopes[last] = last == 1 ? secant[0] : End(h[^1], h[^2], secant[^1], secant[^2]);
        return slopes;
    }

    // The parabola through the last three points, held within what keeps the piece monotone.
    private static double End(double h, double next, double secant, double nextSecant)
    {
        double slope = ((((2 * h) + next) * secant) - (h * nextSecant)) / (h + next);
        if (slope * secant <= 0)
            return 0;
        return secant * nextSecant <= 0 && Math.Abs(slope) > 3 * Math.Abs(secant) ? 3 * secant : slope;
    }
}
