using Laydown.Plan.Log;
using Xunit;

namespace Laydown.Core.Tests.Log;

/// <summary>Printed constants and a printed chart.</summary>
public sealed class ControlChartPublishedTests
{
    // n, A2, D3, D4, d2, c4 as printed, to three and four decimals [Pyzdek2003].
    private static readonly double[][] Table =
    [
        [2, 1.880, 0, 3.267, 1.128, 0.7979],
        [3, 1.023, 0, 2.574, 1.693, 0.8862],
        [4, 0.729, 0, 2.282, 2.059, 0.9213],
        [5, 0.577, 0, 2.114, 2.326, 0.9400],
        [6, 0.483, 0, 2.004, 2.534, 0.9515],
        [7, 0.419, 0.076, 1.924, 2.704, 0.9594],
        [8, 0.373, 0.136, 1.864, 2.847, 0.9650],
        [9, 0.337, 0.184, 1.816, 2.970, 0.9693],
        [10, 0.308, 0.223, 1.777, 3.078, 0.9727],
    ];

    // 25 values as printed with the chart of single values [Pyzdek2003].
    private static readonly double[] Values =
        [110, 103, 97, 96, 105, 110, 100, 93, 90, 103, 97, 103, 90, 97, 99, 106, 90, 96, 109, 90, 91, 108, 96, 101, 96];

    public static IEnumerable<TheoryDataRow<double[]>> Rows() => Table.Select(r => new TheoryDataRow<double[]>(r));

    /// <summary>Half the last printed decimal; one of it for A2, D3 and D4, which tables print from rounded d2 and d3.</summary>
    [Theory, MemberData(nameof(Rows))]
    public void Constants_equal_the_printed_ones(double[] row)
    {
        var constants = ChartConstants.Of((int)row[0]);
        Assert.Equal(row[1], constants.A2, 0.001);
        Assert.Equal(row[2], constants.D3, 0.001);
        Assert.Equal(row[3], constants.D4, 0.001);
        Assert.Equal(row[4], constants.D2, 0.0005);
        Assert.Equal(row[5], constants.C4, 0.00005);
    }

    [Fact]
    public void The_table_is_whole() => Assert.Equal(Enumerable.Range(2, 9), Table.Select(r => (int)r[0]));

    /// <summary>Mean 99.04, limits 77.32 and 120.76, limit of the ranges 26.68; the printed ones take 2.66 for 3 / d2, which moves them by less than 0.01.</summary>
    [Fact]
    public void The_chart_of_25_values_has_the_printed_limits_and_no_point_beyond_them()
    {
        (ControlChart chart, ControlChart ranges) = ControlCharts.Individuals("value", "", [.. Values.Select((_, i) => Invariant($"{i + 1}"))], Values);
        Assert.Equal(25, Values.Length);
        Assert.Equal(99.04, chart.Centre, 0.005);
        Assert.Equal(120.76, chart.Points[0].Upper, 0.01);
        Assert.Equal(77.32, chart.Points[0].Lower, 0.01);
        Assert.Equal(8.1667, ranges.Centre, 0.00005);
        Assert.Equal(26.68, ranges.Points[0].Upper, 0.01);
        Assert.DoesNotContain(chart.Signals, s => s.Rule == RunRule.BeyondLimit);
    }
}
