using Laydown.Plan.Log;
using Xunit;

namespace Laydown.Core.Tests.Log;

public sealed class ControlChartLawTests
{
    [Fact]
    public void Of_normal_values_with_known_limits_27_in_10_000_lie_beyond_them()
    {
        Chance chance = new(7);
        List<ChartPoint> points = [.. Enumerable.Range(0, 200_000).Select(i => new ChartPoint("", chance.Normal(), -3, 3))];
        int beyond = RunRules.Look(0, points, limitsOnly: true).Count;

        // 540 expected; the tolerance is four times the root of it.
        Assert.InRange(beyond, 540 - 93, 540 + 93);
    }

    [Fact]
    public void Each_rule_speaks_at_the_point_that_completes_it_and_not_before()
    {
        Speaks(RunRule.BeyondLimit, 2, 0.5, -0.5, 3.5);
        Speaks(RunRule.NineOnOneSide, 9, -0.5, 0.5, 0.4, 0.5, 0.4, 0.5, 0.4, 0.5, 0.4, 0.5);
        Speaks(RunRule.SixRisingOrFalling, 5, -0.9, -0.6, -0.3, 0.1, 0.4, 0.7);
        Speaks(RunRule.TwoOfThreeFarOut, 3, 0.1, 2.5, -0.5, 2.2);
        Speaks(RunRule.FourOfFiveOut, 5, -0.2, 1.5, 1.2, -0.3, 1.6, 1.1);
    }

    [Fact]
    public void A_chart_turned_upside_down_tells_the_same()
    {
        Chance chance = new(11);
        List<ChartPoint> points = [.. Enumerable.Range(0, 500).Select(i => new ChartPoint("", chance.Normal() * 1.4, -3, 3))];
        Assert.Equal(
            RunRules.Look(0, points).Select(s => (s.Point, s.Rule)),
            RunRules.Look(0, [.. points.Select(p => p with { Value = -p.Value })]).Select(s => (s.Point, s.Rule)));
        Assert.Equal(5, RunRules.Look(0, points).Select(s => s.Rule).Distinct().Count());
    }

    [Fact]
    public void Charts_by_range_and_by_deviation_agree_on_many_normal_groups()
    {
        Chance chance = new(3);
        List<IReadOnlyList<double>> groups = [.. Enumerable.Range(0, 2000).Select(_ => (IReadOnlyList<double>)[.. Enumerable.Range(0, 5).Select(_ => 8 + (0.2 * chance.Normal()))])];
        string[] labels = [.. groups.Select(_ => "")];
        double byRange = ControlCharts.MeansAndRanges("t", "mm", labels, groups).Means.Points[0].Upper;
        double byDeviation = ControlCharts.MeansAndDeviations("t", "mm", labels, groups).Means.Points[0].Upper;

        // Both estimate 8 + 3 × 0.2 / √5; the mean of 2000 ranges scatters by under 1 % of the reach.
        Assert.Equal(8 + (0.6 / Math.Sqrt(5)), byRange, 0.008);
        Assert.Equal(byRange, byDeviation, 0.005);
    }

    [Fact]
    public void Limits_of_shares_are_wider_for_fewer_pieces_and_stay_within_0_and_1()
    {
        ControlChart chart = ControlCharts.Shares("spoiled", ["a", "b", "c"], [(1, 10), (5, 100), (40, 1000)]);
        Assert.Equal(46.0 / 1110, chart.Centre, 12);
        Assert.True(chart.Points[0].Upper > chart.Points[1].Upper && chart.Points[1].Upper > chart.Points[2].Upper);
        Assert.All(chart.Points, p => Assert.InRange(p.Lower, 0, 1));
    }

    private static void Speaks(RunRule rule, int at, params double[] values)
    {
        ChartPoint[] points = [.. values.Select(v => new ChartPoint("", v, -3, 3))];
        Assert.Equal([(at, rule)], RunRules.Look(0, points).Select(s => (s.Point, s.Rule)));
    }
}
