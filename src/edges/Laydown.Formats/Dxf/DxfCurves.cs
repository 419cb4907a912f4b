using Laydown.Geometry.Outlines;
using Laydown.Measures;

namespace Laydown.Formats.Dxf;

/// <summary>Makes lines of corners from entities. [Dxf2000]</summary>
/// <param name="mm">Millimetres in a unit of the drawing.</param>
/// <param name="toleranceMm">How far flattened curves may lie off, mm.</param>
internal sealed class DxfCurves(double mm, double toleranceMm)
{
    private const double Degree = Math.PI / 180;

    internal RawContour Of(DxfEntity e) => e.Kind switch
    {
        "LINE" => new(e.Field, [At(e, e.Number(10), e.Number(20)), At(e, e.Number(11), e.Number(21))], false),
        "CIRCLE" => new(e.Field, Arc(e, 0, 360), true),
        "ARC" => new(e.Field, Arc(e, e.Number(50), e.Number(51)), false),
        "ELLIPSE" => Ellipse(e),
        "SPLINE" => Spline(e),
        _ => Light(e),
    };

    /// <summary>A polyline of release 12: its corners are entities of their own.</summary>
    internal RawContour Polyline(DxfEntity e, IReadOnlyList<DxfEntity> vertices)
    {
        int flags = e.Whole(70, 0);
        if ((flags & (8 | 16 | 64)) != 0)
            throw new DxfFaultException(e.Field, "a polyline in space or a mesh", "a flat polyline");

        // Corners that only steer a fitted curve (16) are not on it.
        return Joined(e, [.. vertices.Where(v => (v.Whole(70, 0) & 16) == 0).Select(v => (v.Number(10), v.Number(20), v.Number(42, 0)))], (flags & 1) != 0);
    }

    // Corners stand one after the other, each with the bulge of the side that leaves it.
    private RawContour Light(DxfEntity e)
    {
        List<(double X, double Y, double Bulge)> corners = [];
        foreach (DxfPair pair in e.Pairs)
        {
            if (pair.Code == 10)
                corners.Add((e.Parsed(pair), 0, 0));
            else if (pair.Code == 20 && corners.Count > 0)
                corners[^1] = corners[^1] with { Y = e.Parsed(pair) };
            else if (pair.Code == 42 && corners.Count > 0)
                corners[^1] = corners[^1] with { Bulge = e.Parsed(pair) };
        }

        return Joined(e, corners, (e.Whole(70, 0) & 1) != 0);
    }

    private RawContour Joined(DxfEntity e, IReadOnlyList<(double X, double Y, double Bulge)> corners, bool closed)
    {
        List<PointMm> points = [];
        for (int i = 0; i < corners.Count; i++)
        {
            PointMm here = At(e, corners[i].X, corners[i].Y);
            if (i == 0)
                points.Add(here);
            if (i + 1 < corners.Count || closed)
            {
                (double x, double y, _) = corners[(i + 1) % corners.Count];
                points.AddRange(Curves.Bulge(here, At(e, x, y), Mirrored(e) ? -corners[i].Bulge : corners[i].Bulge, toleranceMm));
            }
        }

        // A closed line need not say its first corner twice.
        if (closed && points.Count > 1)
            points.RemoveAt(points.Count - 1);
        return new(e.Field, points, closed);
    }

    private IReadOnlyList<PointMm> Arc(DxfEntity e, double from, double to)
    {
        double radius = e.Number(40) * mm;
        if (!(radius > 0))
            throw new DxfFaultException(e.Field, Invariant($"radius {radius} mm"), "a radius over 0");
        double sweep = (((to - from) % 360) + 360) % 360;
        sweep = sweep == 0 ? 360 : sweep;
        bool mirrored = Mirrored(e);
        return Curves.Arc(At(e, e.Number(10), e.Number(20)), radius, (mirrored ? 180 - from : from) * Degree, (mirrored ? -sweep : sweep) * Degree, toleranceMm);
    }

    // Centre and axis are in the coordinates of the drawing; a direction of view from below turns the way round.
    private RawContour Ellipse(DxfEntity e)
    {
        PointMm centre = new(e.Number(10) * mm, e.Number(20) * mm), axis = new(e.Number(11) * mm, e.Number(21) * mm);
        double ratio = e.Number(40), from = e.Number(41, 0), to = e.Number(42, 2 * Math.PI);
        if (!(ratio > 0) || ratio > 1e6 || (axis.XMm == 0 && axis.YMm == 0))
            throw new DxfFaultException(e.Field, Invariant($"ratio {ratio} of axis {axis.XMm}, {axis.YMm} mm"), "axes over 0");
        double sweep = (((to - from) % (2 * Math.PI)) + (2 * Math.PI)) % (2 * Math.PI);
        bool whole = sweep < 1e-9 || sweep > (2 * Math.PI) - 1e-9;
        return new(e.Field, Curves.Ellipse(centre, axis, Mirrored(e) ? -ratio : ratio, from, whole ? 2 * Math.PI : sweep, toleranceMm), whole);
    }

    private RawContour Spline(DxfEntity e)
    {
        List<double> knots = [], weights = [];
        List<PointMm> controls = [], fits = [];
        foreach (DxfPair pair in e.Pairs)
        {
            switch (pair.Code)
            {
                case 40: knots.Add(e.Parsed(pair)); break;
                case 41: weights.Add(e.Parsed(pair)); break;
                case 10: controls.Add(new(e.Parsed(pair) * mm, 0)); break;
                case 20 when controls.Count > 0: controls[^1] = controls[^1] with { YMm = e.Parsed(pair) * mm }; break;
                case 11: fits.Add(new(e.Parsed(pair) * mm, 0)); break;
                case 21 when fits.Count > 0: fits[^1] = fits[^1] with { YMm = e.Parsed(pair) * mm }; break;
            }
        }

        if (controls.Count == 0 && fits.Count > 0)
            throw new DxfFaultException(e.Field, "a curve through given points without control points", "a spline with control points and knots");
        int degree = e.Whole(71, 3);
        if (SplineCurve.Fault(degree, knots, controls, weights) is { } fault)
            throw new DxfFaultException(e.Field, fault.Split("; wanted ")[0], fault.Contains("; wanted ", StringComparison.Ordinal) ? fault.Split("; wanted ")[1] : "a sound spline");
        return new(e.Field, new SplineCurve(degree, knots, controls, weights).Flattened(toleranceMm), (e.Whole(70, 0) & 1) != 0);
    }

    // Seen from below (extrusion along −z) a flat entity's x runs to the left.
    private static bool Mirrored(DxfEntity e) => e.Number(230, 1) < 0;

    private PointMm At(DxfEntity e, double x, double y) => new((Mirrored(e) ? -x : x) * mm, y * mm);
}
