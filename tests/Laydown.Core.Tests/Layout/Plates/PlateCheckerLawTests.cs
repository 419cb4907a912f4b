using Laydown.Instances.Plates;
using Laydown.Instances.Rectangles;

namespace Laydown.Core.Tests.Layout.Plates;

/// <summary>The judge of cut plates catches each way in which one can be wrong.</summary>
public sealed class PlateCheckerLawTests
{
    private static readonly RectInstance Instance = new(
        "small", [new(6000, 3210, null, 1), new(6000, 3210, null, 1)], [new(1000, 500, 1, 0), new(1000, 400, 1, 0), new(700, 900, 1, 1)],
        [new(0, 5000, 3000, 10, 10), new(0, 950, 1950, 10, 10)], new Dictionary<string, string>());

    private static readonly CutCell Pair = new(0, 1000, [new(0, 0, 0, 1000, 500), new(1, 0, 500, 1000, 400)]);

    private static readonly CutCell Alone = new(1000, 1700, [new(2, 1000, 0, 700, 900)]);

    [Fact]
    public void A_right_cutting_has_no_fault_and_its_waste_is_told()
    {
        IReadOnlyList<IReadOnlyList<CutColumn>> cut = [[new(0, 1700, [new(0, 900, [Pair, Alone])])]];
        Assert.Empty(PlateChecker.Faults(Instance, cut, new()));
        Assert.Equal((1700L * 3210) - (1700 * 900), PlateChecker.Waste(Instance, cut));
    }

    [Theory]
    [InlineData(1710, 900, "10 of waste at the end of a row")]
    [InlineData(3600, 900, "a column 3600 wide")]
    [InlineData(5005, 900, "the cut at 5005 goes through a defect")]
    [InlineData(1700, 910, "10 of waste in the cell at 1000")]
    [InlineData(1700, 3200, "10 of waste over the last row")]
    [InlineData(1700, 1955, "the cut across at 1955 goes through a defect")]
    [InlineData(1600, 900, "a cell from 1000 to 1700, wanted from 1000 within 1600")]
    [InlineData(5990, 900, "10 of waste at the right")]
    public void A_wrong_cut_is_told(int right, int top, string told) =>
        Assert.Contains(PlateChecker.Faults(Instance, [[new(0, right, [new(0, top, [Pair, Alone])])]], new()), f => f.EndsWith(told, StringComparison.Ordinal));

    [Fact]
    public void A_second_cut_in_a_cell_is_told() =>
        Assert.Contains("plate 1: 2 cuts in the cell at 0", PlateChecker.Faults(Instance, [[new(0, 1700, [new(0, 1000, [Pair, Alone])])]], new()));

    [Fact]
    public void Panes_out_of_order_missing_or_on_a_defect_are_told()
    {
        IReadOnlyList<string> faults = PlateChecker.Faults(
            Instance with { Defects = [new(0, 20, 20, 1, 1)] },
            [[new(0, 1000, [new(0, 900, [new(0, 1000, [new(1, 0, 0, 1000, 400), new(0, 0, 400, 1000, 500)])])])]], new());
        Assert.Equal(["plate 1: pane 1 holds a defect", "pane 2 is cut 0 times", "stack 0 is cut out of order"], faults);
    }
}
