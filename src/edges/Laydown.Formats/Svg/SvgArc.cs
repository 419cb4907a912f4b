using Laydown.Geometry.Outlines;
using Laydown.Measures;

namespace Laydown.Formats.Svg;

/// <summary>Arcs of ellipses between two points, as path data gives them. [SVG11], appendix F.6</summary>
internal static class SvgArc
{
    /// <summary>Corners after the start, with the end; radii that do not reach are enlarged.</summary>
    internal static IReadOnlyList<PointMm> Points(PointMm from, PointMm to, double rx, double ry, double turnDegrees, bool large, bool sweep, double tolerance)
    {
        (double sin, double cos) = Math.SinCos(turnDegrees * Math.PI / 180);
        double dx = (from.XMm - to.XMm) / 2, dy = (from.YMm - to.YMm) / 2;
        double x = (cos * dx) + (sin * dy), y = (cos * dy) - (sin * dx);
        double reach = (x * x / (rx * rx)) + (y * y / (ry * ry));
        if (reach > 1)
            (rx, ry) = (rx * Math.Sqrt(reach), ry * Math.Sqrt(reach));

        // The centre in the turned frame, then on the page.
        double part = (rx * rx * y * y) + (ry * ry * x * x);
        double off = Math.Sqrt(Math.Max(0, ((rx * rx * ry * ry) / part) - 1)) * (large == sweep ? -1 : 1);
        double cx = off * rx * y / ry, cy = -off * ry * x / rx;
        PointMm centre = new(
            (cos * cx) - (sin * cy) + ((from.XMm + to.XMm) / 2), (sin * cx) + (cos * cy) + ((from.YMm + to.YMm) / 2));
        double first = Math.Atan2((y - cy) / ry, (x - cx) / rx), second = Math.Atan2((-y - cy) / ry, (-x - cx) / rx);
        double way = second - first;
        if (sweep && way < 0)
            way += 2 * Math.PI;
        else if (!sweep && way > 0)
            way -= 2 * Math.PI;

        IReadOnlyList<PointMm> arc = Curves.Ellipse(centre, new(rx * cos, rx * sin), ry / rx, first, way, tolerance);
        return [.. arc.Skip(1).Take(arc.Count - 2), to];
    }
}
