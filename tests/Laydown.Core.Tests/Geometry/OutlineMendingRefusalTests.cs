using Laydown.Geometry.Outlines;
using Laydown.Measures;
using Xunit;

namespace Laydown.Core.Tests.Geometry;

public sealed class OutlineMendingRefusalTests
{
    [Fact]
    public void Two_areas_of_one_line_are_refused_with_the_place_where_it_crosses() =>
        Refused("crosses itself at 50, 50 mm and encloses 2 areas", new RawContour("eight", [new(0, 0), new(100, 100), new(100, 0), new(0, 100)], true));

    [Fact]
    public void An_open_line_is_refused_with_its_gap() =>
        Refused("ends 30 mm apart", new RawContour("hook", [new(0, 0), new(50, 0), new(50, 30), new(0, 30)], false));

    [Fact]
    public void Lines_without_area_are_refused()
    {
        Refused("area of 0 mm²", new RawContour("flat", [new(0, 0), new(10, 0), new(20, 0), new(5, 0)], true));
        Refused("1 different corners", new RawContour("dot", [new(3, 3), new(3, 3), new(3, 3)], true));
    }

    [Fact]
    public void Numbers_that_are_none_are_refused() => Refused("no number", new RawContour("nan", [new(0, 0), new(double.NaN, 0), new(5, 5)], true));

    [Fact]
    public void Rings_that_cross_are_refused() => Refused(
        "crosses", new RawContour("one", [new(0, 0), new(10, 0), new(10, 10), new(0, 10)], true), new RawContour("two", [new(5, 5), new(12, 5), new(12, 12), new(5, 12)], true));

    [Fact]
    public void An_extent_that_no_board_has_is_refused_with_a_word_on_units() =>
        Refused("the unit of the file may be another", new RawContour("huge", [new(0, 0), new(1e7, 0), new(1e7, 1e7)], true));

    [Fact]
    public void A_hole_across_the_outline_is_refused()
    {
        RawContour outer = new("outer", [new(0, 0), new(100, 0), new(100, 100), new(0, 100)], true), hole = new("hole 1", [new(90, 10), new(110, 10), new(100, 30)], true);
        InputFault fault = Assert.Single(OutlineMending.WithHoles("p.json", outer, [hole], new()).Faults);
        Assert.Equal("p.json, hole 1: found a hole that crosses or touches the outer ring; wanted a hole wholly within it.", fault.ToString());
    }

    [Theory]
    [InlineData(-1, 0)]
    [InlineData(0, -2)]
    public void A_tool_or_gap_under_nothing_cannot_be_made(double tool, double gap) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new ToolPath(tool, gap));

    private static void Refused(string words, params RawContour[] contours)
    {
        Reading<MendedOutlines> reading = OutlineMending.Nested("part.dxf", contours, new());
        Assert.False(reading.IsTaken);
        Assert.Contains(words, string.Join("\n", reading.Faults), StringComparison.Ordinal);
    }
}
