using Laydown.Plan.Log;
using Xunit;

namespace Laydown.Core.Tests.Log;

public sealed class ControlChartRefusalTests
{
    [Fact]
    public void Too_few_points_uneven_groups_and_impossible_counts_are_refused()
    {
        Assert.Throws<ArgumentException>(() => ControlCharts.Individuals("x", "", ["a"], [1]));
        Assert.Throws<ArgumentException>(() => ControlCharts.Individuals("x", "", ["a", "b"], [1, double.NaN]));
        Assert.Throws<ArgumentException>(() => ControlCharts.MeansAndRanges("x", "", ["a", "b"], [[1, 2], [1, 2, 3]]));
        Assert.Throws<ArgumentException>(() => ControlCharts.Shares("x", ["a"], [(3, 2)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => ChartConstants.Of(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentT.Value(1, 3));
    }
}
