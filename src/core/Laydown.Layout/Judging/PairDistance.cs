using Laydown.Geometry.Shapes;
using Laydown.Measures;

namespace Laydown.Layout.Judging;

/// <summary>How far two pieces are apart.</summary>
/// <param name="ApartMm">Distance, mm; negative where they share area: how deep, what they share over the longer side of the rectangle around it.</param>
/// <param name="Where">What they share, or what lies between them where they are nearest, mm.</param>
/// <param name="SharedMm2">Area they share, mm².</param>
internal readonly record struct PairDistance(double ApartMm, RectMm Where, double SharedMm2)
{
    /// <summary>The distance of two pieces as they lie.</summary>
    /// <param name="one">One piece.</param>
    /// <param name="other">The other.</param>
    /// <param name="alongAxes">Whether only what is free along x or along y counts, as for a saw, whose kerf runs the whole way between two.</param>
    internal static PairDistance Of(LyingPiece one, LyingPiece other, bool alongAxes) =>
        one.Area is null && other.Area is null ? OfBoxes(one.Box, other.Box, alongAxes) : OfShapes(one.Shape, other.Shape);

    private static PairDistance OfBoxes(RectMm a, RectMm b, bool alongAxes)
    {
        double x = Math.Max(a.XMm, b.XMm) - Math.Min(a.RightMm, b.RightMm), y = Math.Max(a.YMm, b.YMm) - Math.Min(a.TopMm, b.TopMm);
        double apart = !alongAxes && x > 0 && y > 0 ? Math.Sqrt((x * x) + (y * y)) : Math.Max(x, y);
        RectMm where = new(
            Math.Min(Math.Max(a.XMm, b.XMm), Math.Min(a.RightMm, b.RightMm)), Math.Min(Math.Max(a.YMm, b.YMm), Math.Min(a.TopMm, b.TopMm)), Math.Abs(x), Math.Abs(y));
        return new(apart, where, x < 0 && y < 0 ? x * y : 0);
    }

    private static PairDistance OfShapes(Shape one, Shape other)
    {
        (PointMm here, PointMm there) = one.Nearest(other);
        double x = Math.Abs(here.XMm - there.XMm), y = Math.Abs(here.YMm - there.YMm), apart = Math.Sqrt((x * x) + (y * y));
        if (apart > 0)
            return new(apart, new(Math.Min(here.XMm, there.XMm), Math.Min(here.YMm, there.YMm), x, y), 0);
        Shape common = one.Common(other);
        RectMm shared = common.IsEmpty ? new(here.XMm, here.YMm, 0, 0) : common.Bounds;
        double longer = Math.Max(shared.WidthMm, shared.HeightMm);
        return new(longer > 0 ? -common.AreaMm2 / longer : 0, shared, common.AreaMm2);
    }
}
