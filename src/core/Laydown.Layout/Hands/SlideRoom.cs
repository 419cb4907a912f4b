using Laydown.Geometry.Shapes;
using Laydown.Measures;

namespace Laydown.Layout.Hands;

/// <summary>How far a shape slides in one direction before it meets another.</summary>
internal static class SlideRoom
{
    /// <summary>Bare length on that side, mm, 0 where they touch; null where it never meets the other that way.</summary>
    internal static double? Of(Shape here, Shape other, PieceSide side)
    {
        // Turned so that it slides to the right: either a corner of it meets an edge of the other, or an edge of it a corner.
        IReadOnlyList<PointMm[]> moving = Rings(here, side), standing = Rings(other, side);
        double least = double.MaxValue;
        foreach (PointMm[] ring in moving)
            foreach (PointMm[] wall in standing)
                least = Math.Min(least, Math.Min(Least(ring, wall, ahead: true), Least(wall, ring, ahead: false)));
        return least < double.MaxValue ? least : null;
    }

    // From each corner level to each edge of the other; only what lies ahead in the direction of the slide counts.
    private static double Least(PointMm[] corners, PointMm[] edges, bool ahead)
    {
        double least = double.MaxValue;
        foreach (PointMm p in corners)
            for (int i = 0; i < edges.Length; i++)
            {
                (PointMm a, PointMm b) = (edges[i], edges[(i + 1) % edges.Length]);
                if (Math.Min(a.YMm, b.YMm) > p.YMm || Math.Max(a.YMm, b.YMm) < p.YMm)
                    continue;
                double x = a.YMm == b.YMm ? (ahead ? Math.Min(a.XMm, b.XMm) : Math.Max(a.XMm, b.XMm)) : a.XMm + ((b.XMm - a.XMm) * (p.YMm - a.YMm) / (b.YMm - a.YMm));
                double apart = ahead ? x - p.XMm : p.XMm - x;
                if (apart >= -1e-9)
                    least = Math.Min(least, Math.Max(0, apart));
            }

        return least;
    }

    private static IReadOnlyList<PointMm[]> Rings(Shape shape, PieceSide side) =>
        [.. shape.OuterRings().Concat(shape.Holes()).Select(r => r.Points.Select(p => Turned(p, side)).ToArray())];

    private static PointMm Turned(PointMm p, PieceSide side) => side switch
    {
        PieceSide.Right => p,
        PieceSide.Left => new(-p.XMm, p.YMm),
        PieceSide.Above => new(p.YMm, p.XMm),
        _ => new(-p.YMm, p.XMm),
    };
}
