using Laydown.Geometry.Outlines;
using Laydown.Geometry.Shapes;
using Laydown.Measures;
using NetTopologySuite.Geometries;
using Xunit;

namespace Laydown.Core.Tests.Geometry;

public sealed class OutlineMendingLawTests
{
    private static readonly OutlineRules Rules = new();

    [Fact]
    public void Rings_within_rings_are_holes_and_rings_within_holes_are_shapes_again()
    {
        MendedOutlines mended = Taken(Square("island", 40, 40, 20), Square("plate", 0, 0, 100), Square("hole", 20, 20, 60), Square("apart", 200, 0, 10));
        Assert.Equal(["island", "plate", "apart"], mended.Shapes.Select(s => s.Field));
        Assert.Equal([400, 6400, 100], mended.Shapes.Select(s => s.Area.AreaMm2));
        Assert.Empty(mended.Findings);
    }

    [Fact]
    public void Open_lines_whose_ends_meet_are_joined_whichever_way_they_run()
    {
        MendedOutlines mended = Taken(
            new("a", [new(0, 0), new(50, 0)], false), new("b", [new(50, 30), new(50.05, 0)], false), new("c", [new(50, 30), new(0, 30), new(0, 0.1)], false));
        Finding joined = Assert.Single(mended.Findings, f => f.Code == "outline-open");
        Assert.Contains("3 lines", joined.Measured, StringComparison.Ordinal);
        Assert.Equal(1500, Assert.Single(mended.Shapes).Area.AreaMm2, 5.0);
    }

    [Fact]
    public void Doubled_corners_and_a_spike_are_taken_out()
    {
        MendedOutlines mended = Taken(new RawContour("piece", [new(0, 0), new(0, 0), new(10, 0), new(10, 10), new(30, 30), new(10, 10), new(0, 10)], true));
        Assert.Equal(100, Assert.Single(mended.Shapes).Area.AreaMm2, 1e-9);
        Assert.Equal(["outline-crosses-itself", "outline-double-points"], mended.Findings.Select(f => f.Code).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_loop_inside_the_line_is_swallowed_and_nothing_the_line_encloses_is_lost()
    {
        // The line runs into its own piece and back out: the loop lies within what it encloses.
        MendedOutlines mended = Taken(new RawContour(
            "loop", [new(0, 0), new(100, 0), new(100, 100), new(60, 100), new(60, 80), new(40, 80), new(40, 120), new(70, 120), new(70, 90), new(0, 90)], true));
        Shape shape = Assert.Single(mended.Shapes).Area;
        Assert.Equal(1, shape.Parts);
        Assert.Contains("outline-crosses-itself", mended.Findings.Select(f => f.Code));
        Assert.True(shape.Holds(Shape.Of(new RectMm(0, 0, 100, 90))));
    }

    [Fact]
    public void A_drawing_far_from_its_origin_is_brought_near_with_its_measures_kept()
    {
        MendedOutlines mended = Taken(Square("far", 1e7, -1e7, 250));
        Assert.Equal(new RectMm(0, 0, 250, 250), Assert.Single(mended.Shapes).Area.Bounds);
        Assert.Equal("outline-far-away", Assert.Single(mended.Findings).Code);
    }

    [Fact]
    public void A_hole_outside_is_left_out_and_overlapping_holes_are_joined()
    {
        MendedOutlines mended = OutlineMending.WithHoles(
            "part.json", Square("outer", 0, 0, 100), [Square("one", 10, 10, 20), Square("two", 20, 20, 20), Square("beside", 200, 0, 10)], Rules).Value;
        Assert.Equal(10_000 - 700, Assert.Single(mended.Shapes).Area.AreaMm2, 1e-6);
        Assert.Equal(["outline-hole-outside", "outline-holes-overlap"], mended.Findings.Select(f => f.Code).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_hundred_thousand_rings_are_told_apart()
    {
        RawContour[] rings = [.. Enumerable.Range(0, 100_000).Select(i => Square(Invariant($"r{i}"), i % 400 * 20, i / 400 * 20, 10))];
        Assert.Equal(100_000, OutlineMending.Nested("many.dxf", rings, Rules).Value.Shapes.Count);
    }

    [Theory]
    [InlineData(0.05)]
    [InlineData(0.5)]
    [InlineData(3)]
    public void Simplified_outward_a_shape_still_holds_itself_and_reaches_little_beyond(double tolerance)
    {
        IReadOnlyList<PointMm> wavy = [.. Enumerable.Range(0, 720).Select(i =>
            (Angle: i * Math.PI / 360, Radius: 100 + (20 * Math.Sin(i * Math.PI / 60)))).Select(p => new PointMm(p.Radius * Math.Cos(p.Angle), p.Radius * Math.Sin(p.Angle)))];
        Shape shape = Shape.Of(Outline.Of(wavy, true), Outline.Of(Curves.Arc(new(0, 0), 30, 0, 6.2, 0.001), true));
        Shape simple = OutwardSimplifying.Simplify(shape, tolerance);
        Assert.True(simple.Holds(shape));
        Assert.True(shape.Offset(2.01 * tolerance).Holds(simple));
        Assert.True(Corners(simple) < Corners(shape) / 2, Invariant($"{Corners(simple)} of {Corners(shape)}"));
    }

    [Fact]
    public void The_gap_is_tool_and_bridge_and_what_chords_err_on_both_sides() => Assert.Equal(6.35 + 2 + 0.1, new ToolPath(6.35, 2).GapMm, 1e-12);

    private static int Corners(Shape shape) => shape.OuterRings().Concat(shape.Holes()).Sum(r => r.Points.Count);

    private static MendedOutlines Taken(params RawContour[] contours)
    {
        Reading<MendedOutlines> reading = OutlineMending.Nested("part.dxf", contours, Rules);
        Assert.True(reading.IsTaken, string.Join("\n", reading.Faults));

        // The library's own rules of soundness, asked apart from the code under test.
        GeometryFactory factory = new();
        Assert.All(reading.Value.Shapes, s => Assert.All(s.Area.OuterRings().Concat(s.Area.Holes()), r => Assert.True(
            factory.CreatePolygon([.. r.Points.Append(r.Points[0]).Select(p => new Coordinate(p.XMm, p.YMm))]).IsValid)));
        return reading.Value;
    }

    private static RawContour Square(string name, double x, double y, double side) =>
        new(name, [new(x, y), new(x + side, y), new(x + side, y + side), new(x, y + side)], true);
}
