using Laydown.Measures;

namespace Laydown.Geometry.Outlines;

/// <summary>A curve of pieces of a polynomial, each point a weighted mean of the control points near it. [PieglTiller1997]</summary>
public sealed class SplineCurve
{
    private const int Deepest = 12;

    private readonly int degree;
    private readonly IReadOnlyList<double> knots;
    private readonly IReadOnlyList<PointMm> controls;
    private readonly IReadOnlyList<double> weights;

    /// <summary>A curve.</summary>
    /// <param name="degree">1 to 10.</param>
    /// <param name="knots">As many as control points + degree + 1, none less than the one before.</param>
    /// <param name="controls">Control points, more than the degree.</param>
    /// <param name="weights">One for each control point, all over 0; empty for all alike.</param>
    /// <exception cref="ArgumentException">Counts, order or weights are otherwise.</exception>
    public SplineCurve(int degree, IReadOnlyList<double> knots, IReadOnlyList<PointMm> controls, IReadOnlyList<double> weights)
    {
        ArgumentNullException.ThrowIfNull(knots);
        ArgumentNullException.ThrowIfNull(controls);
        ArgumentNullException.ThrowIfNull(weights);
        if (Fault(degree, knots, controls, weights) is { } fault)
            throw new ArgumentException(fault, nameof(knots));
        (this.degree, this.knots, this.controls) = (degree, knots, controls);
        this.weights = weights.Count > 0 ? weights : [.. controls.Select(_ => 1.0)];
    }

    /// <summary>Why such a curve cannot be, or null.</summary>
    public static string? Fault(int degree, IReadOnlyList<double> knots, IReadOnlyList<PointMm> controls, IReadOnlyList<double> weights)
    {
        ArgumentNullException.ThrowIfNull(knots);
        ArgumentNullException.ThrowIfNull(controls);
        ArgumentNullException.ThrowIfNull(weights);
        return degree is < 1 or > 10 ? Invariant($"degree {degree}; wanted 1 to 10")
            : controls.Count <= degree ? Invariant($"{controls.Count} control points for degree {degree}; wanted more than the degree")
            : knots.Count != controls.Count + degree + 1 ? Invariant($"{knots.Count} knots; wanted {controls.Count + degree + 1}")
            : knots.Any(k => !double.IsFinite(k)) || knots.Zip(knots.Skip(1)).Any(p => p.First > p.Second) ? "knots that fall; wanted knots that never fall"
            : !(knots[^(degree + 1)] > knots[degree]) ? "all knots on one value; wanted a curve of some length"
            : weights.Count > 0 && (weights.Count != controls.Count || weights.Any(w => !(w > 0) || !double.IsFinite(w))) ? "weights that do not fit; wanted one over 0 for each control point"
            : null;
    }

    /// <summary>The curve as straight pieces, with both ends; halved until three places of a piece lie within the tolerance of its chord.</summary>
    public IReadOnlyList<PointMm> Flattened(double toleranceMm = Curves.UsualToleranceMm)
    {
        List<PointMm> points = [At(knots[degree])];
        for (int span = degree; span < knots.Count - degree - 1; span++)
            if (knots[span + 1] > knots[span])
                Halve(knots[span], At(knots[span]), knots[span + 1], At(knots[span + 1]), toleranceMm, 0, points);
        return points;
    }

    /// <summary>The point at a parameter between the first and the last knot of the curve.</summary>
    public PointMm At(double t)
    {
        int span = degree;
        while (span < knots.Count - degree - 2 && t >= knots[span + 1])
            span++;

        // De Boor: the control points of the span are mixed pair by pair until one is left; weights ride along as a third coordinate.
        Span<(double X, double Y, double W)> mix = stackalloc (double, double, double)[degree + 1];
        for (int i = 0; i <= degree; i++)
        {
            int at = span - degree + i;
            mix[i] = (controls[at].XMm * weights[at], controls[at].YMm * weights[at], weights[at]);
        }

        for (int round = 1; round <= degree; round++)
        {
            for (int i = degree; i >= round; i--)
            {
                double from = knots[span - degree + i], to = knots[span + 1 + i - round];
                double share = to > from ? (t - from) / (to - from) : 0;
                mix[i] = (Mix(mix[i - 1].X, mix[i].X, share), Mix(mix[i - 1].Y, mix[i].Y, share), Mix(mix[i - 1].W, mix[i].W, share));
            }
        }

        return new(mix[degree].X / mix[degree].W, mix[degree].Y / mix[degree].W);
    }

    private void Halve(double from, PointMm start, double to, PointMm end, double toleranceMm, int depth, List<PointMm> points)
    {
        double middle = (from + to) / 2;
        PointMm half = At(middle);
        bool near = depth >= 2 && Off(half) <= toleranceMm && Off(At((from + middle) / 2)) <= toleranceMm && Off(At((middle + to) / 2)) <= toleranceMm;
        if (near || depth >= Deepest || points.Count >= Curves.MostPieces)
        {
            points.Add(end);
            return;
        }

        Halve(from, start, middle, half, toleranceMm, depth + 1, points);
        Halve(middle, half, to, end, toleranceMm, depth + 1, points);

        double Off(PointMm p)
        {
            double dx = end.XMm - start.XMm, dy = end.YMm - start.YMm, square = (dx * dx) + (dy * dy);
            double along = square > 0 ? Math.Clamp((((p.XMm - start.XMm) * dx) + ((p.YMm - start.YMm) * dy)) / square, 0, 1) : 0;
            double x = p.XMm - start.XMm - (along * dx), y = p.YMm - start.YMm - (along * dy);
            return Math.Sqrt((x * x) + (y * y));
        }
    }

    private static double Mix(double one, double other, double share) => one + ((other - one) * share);
}
