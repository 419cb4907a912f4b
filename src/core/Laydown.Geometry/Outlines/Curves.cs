using Laydown.Measures;

namespace Laydown.Geometry.Outlines;

/// <summary>Turns curves into straight pieces that leave the curve by no more than a tolerance.</summary>
/// <remarks>
/// All corners lie on the curve, so a chord of an outward bow errs inward: who keeps a distance adds twice the tolerance to it. The number of
/// pieces follows from the greatest second derivative: a chord over a parameter step h leaves the curve by at most h² max|c''| / 8 (from memory).
/// </remarks>
public static class Curves
{
    /// <summary>Most pieces of one curve; a curve that would need more is flattened with as many.</summary>
    public const int MostPieces = 20_000;

    /// <summary>Tolerance where none is asked for, mm (common practice, no source).</summary>
    public const double UsualToleranceMm = 0.05;

    /// <summary>An arc of a circle.</summary>
    /// <param name="centre">Centre, mm.</param>
    /// <param name="radiusMm">Radius, mm; over 0.</param>
    /// <param name="startRadians">Angle of its start, counter-clockwise from the x axis.</param>
    /// <param name="sweepRadians">How far it goes; negative clockwise.</param>
    /// <param name="toleranceMm">Largest distance between chord and arc, mm; over 0.</param>
    /// <returns>Corners with both ends.</returns>
    public static IReadOnlyList<PointMm> Arc(PointMm centre, double radiusMm, double startRadians, double sweepRadians, double toleranceMm = UsualToleranceMm) =>
        Ellipse(centre, new(radiusMm, 0), 1, startRadians, sweepRadians, toleranceMm);

    /// <summary>An arc of an ellipse.</summary>
    /// <param name="centre">Centre, mm.</param>
    /// <param name="majorAxis">From the centre to the end of the longer axis, mm.</param>
    /// <param name="ratio">Shorter over longer axis, over 0.</param>
    /// <param name="start">Parameter of the start, radians from the longer axis.</param>
    /// <param name="sweep">How far it goes in the parameter; negative clockwise.</param>
    /// <param name="toleranceMm">Largest distance between chord and arc, mm; over 0.</param>
    /// <returns>Corners with both ends.</returns>
    public static IReadOnlyList<PointMm> Ellipse(PointMm centre, PointMm majorAxis, double ratio, double start, double sweep, double toleranceMm = UsualToleranceMm)
    {
        double longest = Math.Max(1, ratio) * Math.Sqrt((majorAxis.XMm * majorAxis.XMm) + (majorAxis.YMm * majorAxis.YMm));
        int pieces = Pieces(Math.Abs(sweep) * Math.Sqrt(longest / (8 * Demand(toleranceMm))));

        // A whole turn needs four corners at least, else a small circle loses its area.
        pieces = Math.Max(pieces, (int)Math.Ceiling(Math.Abs(sweep) * 4 / Math.PI));
        PointMm At(double t) => new(
            centre.XMm + (majorAxis.XMm * Math.Cos(t)) - (majorAxis.YMm * ratio * Math.Sin(t)),
            centre.YMm + (majorAxis.YMm * Math.Cos(t)) + (majorAxis.XMm * ratio * Math.Sin(t)));
        return [.. Enumerable.Range(0, pieces + 1).Select(i => At(start + (sweep * i / pieces)))];
    }

    /// <summary>An arc between two corners of a polyline; the bulge is the tangent of a quarter of its angle, positive counter-clockwise.</summary>
    /// <returns>Corners after <paramref name="from"/>, with <paramref name="to"/>.</returns>
    public static IReadOnlyList<PointMm> Bulge(PointMm from, PointMm to, double bulge, double toleranceMm = UsualToleranceMm)
    {
        double dx = to.XMm - from.XMm, dy = to.YMm - from.YMm, chord = Math.Sqrt((dx * dx) + (dy * dy));
        if (chord == 0 || Math.Abs(bulge) < 1e-9)
            return [to];

        // The centre lies off the middle of the chord by half of it over the tangent of half the angle.
        double sweep = 4 * Math.Atan(bulge), off = (1 - (bulge * bulge)) / (4 * bulge);
        PointMm centre = new(((from.XMm + to.XMm) / 2) - (dy * off), ((from.YMm + to.YMm) / 2) + (dx * off));
        double radius = chord * (1 + (bulge * bulge)) / (4 * Math.Abs(bulge));
        double start = Math.Atan2(from.YMm - centre.YMm, from.XMm - centre.XMm);
        IReadOnlyList<PointMm> arc = Arc(centre, radius, start, sweep, toleranceMm);
        return [.. arc.Skip(1).Take(arc.Count - 2), to];
    }

    /// <summary>A cubic curve with two handles.</summary>
    /// <returns>Corners after the start, with the end.</returns>
    public static IReadOnlyList<PointMm> Cubic(PointMm start, PointMm first, PointMm second, PointMm end, double toleranceMm = UsualToleranceMm)
    {
        double bend = 6 * Math.Max(Bend(start, first, second), Bend(first, second, end));
        int pieces = Pieces(Math.Sqrt(bend / (8 * Demand(toleranceMm))));
        PointMm At(double t)
        {
            double s = 1 - t, a = s * s * s, b = 3 * s * s * t, c = 3 * s * t * t, d = t * t * t;
            return new(
                (a * start.XMm) + (b * first.XMm) + (c * second.XMm) + (d * end.XMm),
                (a * start.YMm) + (b * first.YMm) + (c * second.YMm) + (d * end.YMm));
        }

        return [.. Enumerable.Range(1, pieces - 1).Select(i => At((double)i / pieces)), end];
    }

    /// <summary>A quadratic curve with one handle.</summary>
    /// <returns>Corners after the start, with the end.</returns>
    public static IReadOnlyList<PointMm> Quadratic(PointMm start, PointMm handle, PointMm end, double toleranceMm = UsualToleranceMm) =>
        Cubic(start, Between(start, handle), Between(end, handle), end, toleranceMm);

    private static PointMm Between(PointMm end, PointMm handle) =>
        new((end.XMm + (2 * handle.XMm)) / 3, (end.YMm + (2 * handle.YMm)) / 3);

    private static double Bend(PointMm a, PointMm b, PointMm c)
    {
        double x = a.XMm - (2 * b.XMm) + c.XMm, y = a.YMm - (2 * b.YMm) + c.YMm;
        return Math.Sqrt((x * x) + (y * y));
    }

    private static int Pieces(double wanted) => double.IsFinite(wanted) ? (int)Math.Clamp(Math.Ceiling(wanted), 1, MostPieces) : MostPieces;

    private static double Demand(double toleranceMm) => Bounds.Within(toleranceMm, 1e-6, 1000);
}
