using Laydown.Instances.Rectangles;
using NetTopologySuite.Geometries;

namespace Laydown.Core.Tests.Layout;

/// <summary>The checker that judges layouts catches each way in which one can be wrong.</summary>
public sealed class RectCheckerLawTests
{
    private static readonly RectInstance Instance = new("small", [new(10, 10, 2, 100)], [new(6, 4, 1, -1), new(3, 3, 2, -1)], [], new Dictionary<string, string>());

    [Fact]
    public void A_right_layout_has_no_fault() =>
        Assert.Empty(RectChecker.Faults(Instance, [new(0, 1, [new(0, 0, 0, 6, 4), new(1, 6, 0, 3, 3), new(1, 0, 4, 3, 3)])], new(MayTurn: false, Guillotine: true)));

    [Theory]
    [InlineData(5, 0, 6, 4, "leaves")]
    [InlineData(0, 2, 6, 4, "overlap")]
    [InlineData(0, 0, 4, 6, "turned")]
    [InlineData(0, 0, 5, 4, "size")]
    public void A_wrong_place_is_told(int x, int y, int width, int height, string told) =>
        Assert.Contains(
            RectChecker.Faults(Instance, [new(0, 1, [new(0, x, y, width, height), new(1, 0, 5, 3, 3), new(1, 3, 5, 3, 3)])], new(MayTurn: false)),
            f => f.Contains(told, StringComparison.Ordinal));

    [Fact]
    public void Copies_that_are_missing_or_too_many_and_boards_that_are_not_there_are_told()
    {
        IReadOnlyList<string> faults = RectChecker.Faults(Instance, [new(0, 3, [new(0, 0, 0, 6, 4)])], new(MayTurn: false));
        Assert.Equal(["item 0: wanted 1, placed 3", "item 1: wanted 2, placed 0", "board kind 0: 3 used, 2 there"], faults);
    }

    [Fact]
    public void An_item_on_a_defect_is_told() =>
        Assert.Contains(
            RectChecker.Faults(Instance with { Defects = [new(0, 2, 2, 1, 1)] }, [new(0, 1, [new(0, 0, 0, 6, 4)])], new(MayTurn: false)),
            f => f.Contains("defect at 2, 2", StringComparison.Ordinal));

    // Five rectangles around a middle one: no full cut meets none of them.
    [Fact]
    public void A_pinwheel_cannot_be_cut_edge_to_edge() =>
        Assert.Null(RectChecker.Stages([Box(0, 0, 2, 1), Box(2, 0, 1, 2), Box(1, 2, 2, 1), Box(0, 1, 1, 2), Box(1, 1, 1, 1)], upright: true));

    [Theory]
    [InlineData(true, 2)]
    [InlineData(false, 3)]
    public void Stages_are_counted_from_the_direction_of_the_first(bool upright, int stages) =>
        Assert.Equal(stages, RectChecker.Stages([Box(0, 0, 2, 1), Box(0, 1, 2, 1), Box(2, 0, 2, 3)], upright));

    private static Envelope Box(double x, double y, double width, double height) => new(x, x + width, y, y + height);
}
