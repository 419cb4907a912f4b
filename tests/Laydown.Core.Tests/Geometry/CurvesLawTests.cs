using Laydown.Geometry.Outlines;
using Laydown.Measures;
using Xunit;

namespace Laydown.Core.Tests.Geometry;

public sealed class CurvesLawTests
{
    [Theory]
    [InlineData(0.5)]
    [InlineData(25)]
    [InlineData(3000)]
    public void An_arc_lies_on_its_circle_and_no_chord_leaves_it_by_more_than_the_tolerance(double radius)
    {
        IReadOnlyList<PointMm> arc = Curves.Arc(new(10, -20), radius, 0.3, -5, 0.02);
        Assert.All(arc, p => Assert.Equal(radius, From(p, 10, -20), 1e-9));
        Assert.All(arc.Zip(arc.Skip(1)), pair => Assert.InRange(
            radius - From(new((pair.First.XMm + pair.Second.XMm) / 2, (pair.First.YMm + pair.Second.YMm) / 2), 10, -20), 0, 0.02));
    }

    [Theory]
    [InlineData(1, 90)]
    [InlineData(-1, -90)]
    [InlineData(0.41421356237309503, 45)]
    public void A_bulge_is_the_tangent_of_a_quarter_of_the_angle_and_positive_to_the_left(double bulge, double halfAngle)
    {
        // By the definition a bulge of 1 is a half circle; travelling along x, its arc swings to the right-hand side first, below the chord.
        IReadOnlyList<PointMm> arc = Curves.Bulge(new(0, 0), new(10, 0), bulge, 1e-4);
        double radius = 5 / Math.Sin(Math.Abs(halfAngle) * Math.PI / 180);
        double sagitta = radius * (1 - Math.Cos(halfAngle * Math.PI / 180));
        Assert.Equal(new(10, 0), arc[^1]);
        Assert.Equal(-Math.Sign(bulge) * sagitta, arc.MinBy(p => -Math.Abs(p.YMm)).YMm, 1e-3);
    }

    [Fact]
    public void A_spline_of_one_span_is_the_cubic_with_its_handles()
    {
        PointMm a = new(0, 0), b = new(10, 40), c = new(60, -30), d = new(80, 10);
        SplineCurve spline = new(3, [0, 0, 0, 0, 1, 1, 1, 1], [a, b, c, d], []);
        IReadOnlyList<PointMm> cubic = Curves.Cubic(a, b, c, d, 0.01);
        for (int i = 0; i < cubic.Count; i++)
        {
            PointMm at = spline.At((i + 1.0) / cubic.Count);
            Assert.Equal(cubic[i].XMm, at.XMm, 1e-9);
            Assert.Equal(cubic[i].YMm, at.YMm, 1e-9);
        }
    }

    [Fact]
    public void A_spline_with_weights_draws_the_whole_circle()
    {
        // The circle by nine control points [PieglTiller1997]: corners of a square weigh cos 45°.
        double w = Math.Sqrt(0.5);
        SplineCurve circle = new(
            2, [0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4],
            [new(50, 0), new(50, 50), new(0, 50), new(-50, 50), new(-50, 0), new(-50, -50), new(0, -50), new(50, -50), new(50, 0)],
            [1, w, 1, w, 1, w, 1, w, 1]);
        IReadOnlyList<PointMm> points = circle.Flattened(0.01);
        Assert.All(points, p => Assert.Equal(50, From(p, 0, 0), 1e-9));
        Assert.InRange(points.Count, 100, 1000);
    }

    private static double From(PointMm p, double x, double y) => Math.Sqrt(Math.Pow(p.XMm - x, 2) + Math.Pow(p.YMm - y, 2));
}
