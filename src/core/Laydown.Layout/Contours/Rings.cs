using Laydown.Geometry.Shapes;
using Laydown.Measures;

namespace Laydown.Layout.Contours;

/// <summary>Rings of corners with the material on their left: outer rings counter-clockwise, holes clockwise.</summary>
internal static class Rings
{
    /// <summary>The rings of a shape, each with the material on its left.</summary>
    internal static List<List<PointMm>> Of(Shape shape) =>
    [
        .. shape.OuterRings().Select(r => Directed(r, counterClockwise: true)),
        .. shape.Holes().Select(r => Directed(r, counterClockwise: false)),
    ];

    /// <summary>Area, over 0 where counter-clockwise.</summary>
    internal static double Area(List<PointMm> ring)
    {
        double sum = 0;
        for (int i = 0, j = ring.Count - 1; i < ring.Count; j = i++)
            sum += ((ring[j].XMm - ring[0].XMm) * (ring[i].YMm - ring[0].YMm)) - ((ring[i].XMm - ring[0].XMm) * (ring[j].YMm - ring[0].YMm));
        return sum / 2;
    }

    /// <summary>Every side moved outward by a distance that is small against all sides; corners follow.</summary>
    internal static List<PointMm> Grown(List<PointMm> ring, double by)
    {
        List<PointMm> grown = new(ring.Count);
        for (int i = 0; i < ring.Count; i++)
        {
            PointMm before = Side(ring[(i + ring.Count - 1) % ring.Count], ring[i]), after = Side(ring[i], ring[(i + 1) % ring.Count]);
            double open = Math.Max(0.05, 1 + (before.XMm * after.XMm) + (before.YMm * after.YMm));
            double x = (before.YMm + after.YMm) / open, y = -(before.XMm + after.XMm) / open;

            // A sharp corner stays within the grown box, so that a shape as wide as a board still fits it.
            double most = by / Math.Max(1, Math.Max(Math.Abs(x), Math.Abs(y)));
            grown.Add(new(ring[i].XMm + (most * x), ring[i].YMm + (most * y)));
        }

        return grown;
    }

    /// <summary>Whether a point lies in the material: it is inside an odd number of rings.</summary>
    internal static bool Holds(List<List<PointMm>> rings, double x, double y)
    {
        bool inside = false;
        foreach (List<PointMm> ring in rings)
        {
            for (int i = 0, j = ring.Count - 1; i < ring.Count; j = i++)
            {
                if ((ring[i].YMm > y) != (ring[j].YMm > y)
                    && x < ((ring[j].XMm - ring[i].XMm) * (y - ring[i].YMm) / (ring[j].YMm - ring[i].YMm)) + ring[i].XMm)
                    inside = !inside;
            }
        }

        return inside;
    }

    /// <summary>Least distance of a point to any side.</summary>
    internal static double Distance(List<List<PointMm>> rings, double x, double y)
    {
        double least = double.MaxValue;
        foreach (List<PointMm> ring in rings)
        {
            for (int i = 0, j = ring.Count - 1; i < ring.Count; j = i++)
                least = Math.Min(least, SquaredDistance(ring[j], ring[i], x, y));
        }

        return Math.Sqrt(least);
    }

    /// <summary>Area of the convex hull of all corners.</summary>
    internal static double HullArea(List<List<PointMm>> rings)
    {
        List<PointMm> sorted = [.. rings.SelectMany(r => r).OrderBy(p => p.XMm).ThenBy(p => p.YMm)];
        List<PointMm> hull = [.. HalfHull(sorted), .. HalfHull(Enumerable.Reverse(sorted))];
        return Area(hull);
    }

    private static double SquaredDistance(PointMm a, PointMm b, double x, double y)
    {
        double ux = b.XMm - a.XMm, uy = b.YMm - a.YMm, length = (ux * ux) + (uy * uy);
        double along = length > 0 ? Math.Clamp((((x - a.XMm) * ux) + ((y - a.YMm) * uy)) / length, 0, 1) : 0;
        double dx = x - a.XMm - (along * ux), dy = y - a.YMm - (along * uy);
        return (dx * dx) + (dy * dy);
    }

    private static List<PointMm> HalfHull(IEnumerable<PointMm> sorted)
    {
        List<PointMm> half = [];
        foreach (PointMm p in sorted)
        {
            while (half.Count > 1 && Turn(half[^2], half[^1], p) <= 0)
                half.RemoveAt(half.Count - 1);
            half.Add(p);
        }

        half.RemoveAt(half.Count - 1);
        return half;
    }

    /// <summary>Twice the area of the triangle: over 0 where the way turns left at <paramref name="b"/>.</summary>
    internal static double Turn(PointMm a, PointMm b, PointMm c) =>
        ((b.XMm - a.XMm) * (c.YMm - a.YMm)) - ((c.XMm - a.XMm) * (b.YMm - a.YMm));

    private static PointMm Side(PointMm a, PointMm b)
    {
        double dx = b.XMm - a.XMm, dy = b.YMm - a.YMm, length = Math.Sqrt((dx * dx) + (dy * dy));
        return length > 0 ? new(dx / length, dy / length) : default;
    }

    private static List<PointMm> Directed(Outline ring, bool counterClockwise)
    {
        List<PointMm> points = [.. ring.Points];
        if (Area(points) > 0 != counterClockwise)
            points.Reverse();
        return points;
    }
}
