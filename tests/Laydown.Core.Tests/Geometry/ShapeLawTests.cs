using Laydown.Geometry.Shapes;
using Laydown.Measures;

namespace Laydown.Core.Tests.Geometry;

public sealed class ShapeLawTests
{
    private static readonly Shape Square = Shape.Of(new RectMm(0, 0, 100, 100));

    // A square grown by d: a² + 4 a d + π d². The quarter circles are drawn by 16 straight pieces, so that a little is missing.
    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(25)]
    public void A_grown_square_has_the_area_of_the_formula(double by)
    {
        double formula = (100 * 100) + (400 * by) + (Math.PI * by * by);
        Assert.InRange(Square.Offset(by).AreaMm2, formula - (0.01 * by * by), formula);
    }

    [Fact]
    public void A_shrunk_square_is_a_smaller_square() => Assert.Equal(80 * 80, Square.Offset(-10).AreaMm2, 6);

    [Fact]
    public void A_square_shrunk_by_half_its_side_is_nothing() => Assert.True(Square.Offset(-50).IsEmpty);

    [Fact]
    public void Union_and_common_part_add_up_to_both()
    {
        Shape other = Shape.Of(new RectMm(60, 30, 100, 20));
        Assert.Equal(Square.AreaMm2 + other.AreaMm2, Square.Union(other).AreaMm2 + Square.Common(other).AreaMm2, 6);
        Assert.Equal(Square.AreaMm2 - (40 * 20), Square.Less(other).AreaMm2, 6);
    }

    [Fact]
    public void A_hole_is_left_out_and_can_be_read_back()
    {
        Shape ring = Shape.Of(Rect(0, 0, 100, 100), Rect(20, 20, 30, 30));
        Assert.Equal(10_000 - 900, ring.AreaMm2, 6);
        Assert.Equal(new RectMm(20, 20, 30, 30), Assert.Single(ring.Holes()).Bounds);
        Assert.False(ring.Holds(Shape.Of(new RectMm(30, 30, 5, 5))));
        Assert.True(ring.Holds(Shape.Of(new RectMm(60, 60, 40, 40))));
    }

    [Fact]
    public void Distance_is_that_between_nearest_corners() => Assert.Equal(50, Square.DistanceMm(Shape.Of(new RectMm(130, 140, 10, 10))), 9);

    [Fact]
    public void A_shape_cut_in_two_has_two_parts() => Assert.Equal(2, Square.Less(Shape.Of(new RectMm(40, -1, 20, 102))).Parts);

    [Fact]
    public void A_triangle_of_sides_3_4_5_has_its_length_gap_and_area()
    {
        PointMm[] points = [new(0, 0), new(30, 0), new(30, 40)];
        Assert.Equal(120, Outline.Of(points, closed: true).LengthMm, 9);
        Assert.Equal(70, Outline.Of(points, closed: false).LengthMm, 9);
        Assert.Equal(50, Outline.Of(points, closed: false).GapMm, 9);
        Assert.Equal(600, Shape.Of(Outline.Of(points, closed: true)).AreaMm2, 9);
    }

    [Fact]
    public void Crossing_is_found_where_it_is_and_not_where_a_path_only_closes()
    {
        Assert.Equal(new PointMm(50, 50), Outline.Of([new(0, 0), new(100, 100), new(100, 0), new(0, 100)], closed: true).FirstCrossing());
        Assert.Null(Rect(0, 0, 100, 100).FirstCrossing());
        Assert.Null(Outline.Of([new(0, 0), new(100, 0), new(100, 100)], closed: false).FirstCrossing());
    }

    [Fact]
    public void A_repeated_corner_does_not_count() => Assert.Equal(3, Outline.Of([new(0, 0), new(0, 0), new(9, 0), new(9, 9), new(0, 0)], closed: true).Points.Count);

    [Fact]
    public void What_is_no_shape_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Outline.Of([new(0, 0), new(0, 0)], closed: false));
        Assert.Throws<ArgumentException>(() => Outline.Of([new(0, 0), new(double.NaN, 0)], closed: false));
        Assert.Throws<ArgumentException>(() => Outline.Of([new(0, 0), new(1, 0)], closed: true));
        Assert.Throws<ArgumentException>(() => Shape.Of(Outline.Of([new(0, 0), new(100, 100), new(100, 0), new(0, 100)], closed: true)));
        Assert.Throws<ArgumentException>(() => Shape.Of(Rect(0, 0, 10, 10), Rect(5, 5, 10, 10)));
    }

    private static Outline Rect(double x, double y, double w, double h) => Outline.Of([new(x, y), new(x + w, y), new(x + w, y + h), new(x, y + h)], closed: true);
}
