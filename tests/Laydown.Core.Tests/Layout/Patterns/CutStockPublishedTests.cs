using Laydown.Instances.Rectangles;
using Laydown.Layout.Patterns;
using Laydown.Layout.Rectangles;

namespace Laydown.Core.Tests.Layout.Patterns;

/// <summary>Published instances of tests/data/layout, their bounds and best values beside them.</summary>
public sealed class CutStockPublishedTests
{
    /// <summary>The bound is the value of the same linear programme as in the published list, which rounds it up to what sheets add up to.</summary>
    [Theory]
    [InlineData(false, "best_2stage_oriented_area", "bound_oriented")]
    [InlineData(true, "best_2stage_rotated_area", "bound_rotated")]
    public void Two_stages_on_three_sizes_meet_the_published_bound_and_come_within_a_thousandth_of_the_best(bool mayTurn, string best, string bound)
    {
        RectInstance instance = RectInstance.Read(StockData.Folder("cutting-stock-cintra"), "gcut1d");
        TableRow values = Table.Read(Path.Combine(StockData.Folder("cutting-stock-cintra"), "values.csv"))[0];
        RectProblem problem = StockData.Problem(instance, 2, upright: false, mayTurn);

        (RectLayout layout, double proven) = CutStock.SolveWithBound(problem, new(Iterations: 24), null, CancellationToken.None);

        Assert.Empty(RectChecker.Faults(instance, StockData.Bins(layout), new(mayTurn, true, 2, false)));
        Assert.Equal(values.Value(bound), proven);
        Assert.InRange(StockData.Cost(problem, layout), proven, 1.001 * values.Value(best)!.Value);
    }

    [Fact]
    public void Three_stages_meet_the_published_number_of_boards()
    {
        RectInstance instance = RectInstance.Read(StockData.Folder("cutting-stock-ATP"), "ATP36");
        TableRow values = Table.Read(Path.Combine(StockData.Folder("cutting-stock-ATP"), "values.csv"))[0];

        RectLayout layout = CutStock.Solve(StockData.Problem(instance, 3, upright: true, mayTurn: false, countBoards: true), new(Iterations: 8), null, CancellationToken.None);

        Assert.Empty(RectChecker.Faults(instance, StockData.Bins(layout), new(false, true, 3, true)));
        Assert.Equal(values.Value("best_bins_3stage_vertical_oriented"), layout.Sheets.Sum(s => s.Repeats));
    }
}
