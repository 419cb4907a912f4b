using Laydown.Measures;

namespace Laydown.Plan.Log;

/// <summary>Makes charts: single values, means and ranges or standard deviations of groups, shares. [Shewhart1931]</summary>
public static class ControlCharts
{
    /// <summary>Fewest points of which limits are reckoned.</summary>
    public const int FewestPoints = 2;

    private const string Source = "Shewhart1931";

    /// <summary>Single values and their moving ranges. Limits: mean ± 3 / d2 × mean moving range, d2 for two values. [Pyzdek2003]</summary>
    /// <param name="name">What is charted.</param>
    /// <param name="unit">Its unit.</param>
    /// <param name="labels">One for each value.</param>
    /// <param name="values">The values, oldest first; at least two.</param>
    /// <exception cref="ArgumentException">Fewer than two values, a value that is not finite, or as many labels as values are wanted.</exception>
    public static (ControlChart Values, ControlChart Ranges) Individuals(
        string name, string unit, IReadOnlyList<string> labels, IReadOnlyList<double> values)
    {
        Check(labels, values.Count, FewestPoints);
        CheckFinite(values);
        double mean = values.Average();
        double[] ranges = [.. Enumerable.Range(1, values.Count - 1).Select(i => Math.Abs(values[i] - values[i - 1]))];
        double range = ranges.Average();
        var constants = ChartConstants.Of(2);
        double reach = 3 / constants.D2 * range;
        ControlChart chart = Chart(name, unit, mean, [.. values.Select((v, i) => new ChartPoint(labels[i], v, mean - reach, mean + reach))],
            [new("centre", mean, unit, Invariant($"mean of {values.Count} values"), Source),
             new("limits from the centre", reach, unit, Invariant($"3 / {constants.D2:0.000} × mean moving range {range:0.####}"), Source)]);
        return (chart, RangeChart(Invariant($"{name}, moving range"), unit, [.. labels.Skip(1)], ranges, constants));
    }

    /// <summary>Means of groups, and their ranges. Limits of the means: ± A2 × mean range; of the ranges: D3 and D4 × mean range.</summary>
    /// <param name="name">What is charted.</param>
    /// <param name="unit">Its unit.</param>
    /// <param name="labels">One for each group.</param>
    /// <param name="groups">Groups of one size, 2 to 25, oldest first; at least two.</param>
    /// <exception cref="ArgumentException">Groups of different sizes, or too few.</exception>
    public static (ControlChart Means, ControlChart Ranges) MeansAndRanges(
        string name, string unit, IReadOnlyList<string> labels, IReadOnlyList<IReadOnlyList<double>> groups)
    {
        ChartConstants constants = Grouped(labels, groups);
        double[] ranges = [.. groups.Select(g => g.Max() - g.Min())];
        double reach = constants.A2 * ranges.Average();
        return (Means(name, unit, labels, groups, reach, Invariant($"{constants.A2:0.000} × mean range {ranges.Average():0.####}")),
            RangeChart(Invariant($"{name}, range"), unit, labels, ranges, constants));
    }

    /// <summary>Means of groups, and their standard deviations. Limits of the means: ± A3 × mean deviation; of the deviations: B3 and B4 × it.</summary>
    /// <inheritdoc cref="MeansAndRanges" path="/param"/>
    /// <exception cref="ArgumentException">Groups of different sizes, or too few.</exception>
    public static (ControlChart Means, ControlChart Deviations) MeansAndDeviations(
        string name, string unit, IReadOnlyList<string> labels, IReadOnlyList<IReadOnlyList<double>> groups)
    {
        ChartConstants constants = Grouped(labels, groups);
        double[] spreads = [.. groups.Select(Spread)];
        double mean = spreads.Average(), reach = constants.A3 * mean;
        return (Means(name, unit, labels, groups, reach, Invariant($"{constants.A3:0.000} × mean standard deviation {mean:0.####}")),
            Chart(Invariant($"{name}, standard deviation"), unit, mean,
                [.. spreads.Select((s, i) => new ChartPoint(labels[i], s, constants.B3 * mean, constants.B4 * mean))],
                [new("centre", mean, unit, Invariant($"mean of {spreads.Length} standard deviations"), Source)], limitsOnly: true));
    }

    /// <summary>Shares of spoiled pieces. Limits of each point: p ± 3 √(p (1 − p) / n), kept within 0 and 1.</summary>
    /// <param name="name">What is charted.</param>
    /// <param name="labels">One for each point.</param>
    /// <param name="counts">Spoiled, 0 to all, and all, at least 1.</param>
    /// <exception cref="ArgumentException">No point, or a count outside its range.</exception>
    public static ControlChart Shares(string name, IReadOnlyList<string> labels, IReadOnlyList<(int Spoiled, int All)> counts)
    {
        Check(labels, counts.Count, 1);
        if (counts.Any(c => c.All < 1 || c.Spoiled < 0 || c.Spoiled > c.All))
            throw new ArgumentException("A count: wanted 0 to all spoiled, of at least 1.", nameof(counts));
        double share = (double)counts.Sum(c => c.Spoiled) / counts.Sum(c => c.All);
        return Chart(name, "", share, [.. counts.Select((c, i) => Point(labels[i], c.Spoiled, c.All))],
            [new("centre", share, "", Invariant($"{counts.Sum(c => c.Spoiled)} of {counts.Sum(c => c.All)}"), Source)]);

        ChartPoint Point(string label, int spoiled, int all)
        {
            double reach = 3 * Math.Sqrt(share * (1 - share) / all);
            return new(label, (double)spoiled / all, Math.Max(0, share - reach), Math.Min(1, share + reach));
        }
    }

    private static ControlChart Means(
        string name, string unit, IReadOnlyList<string> labels, IReadOnlyList<IReadOnlyList<double>> groups, double reach, string because)
    {
        double centre = groups.Average(g => g.Average());
        return Chart(name, unit, centre, [.. groups.Select((g, i) => new ChartPoint(labels[i], g.Average(), centre - reach, centre + reach))],
            [new("centre", centre, unit, Invariant($"mean of {groups.Count} means of {groups[0].Count}"), Source),
             new("limits from the centre", reach, unit, because, Source)]);
    }

    private static ControlChart RangeChart(string name, string unit, IReadOnlyList<string> labels, double[] ranges, ChartConstants constants)
    {
        double mean = ranges.Average();
        return Chart(name, unit, mean, [.. ranges.Select((r, i) => new ChartPoint(labels[i], r, constants.D3 * mean, constants.D4 * mean))],
            [new("centre", mean, unit, Invariant($"mean of {ranges.Length} ranges"), Source),
             new("upper limit", constants.D4 * mean, unit, Invariant($"{constants.D4:0.000} × mean range"), Source)], limitsOnly: true);
    }

    private static ControlChart Chart(
        string name, string unit, double centre, IReadOnlyList<ChartPoint> points, IReadOnlyList<Figure> figures, bool limitsOnly = false) =>
        new(name, unit, centre, points, RunRules.Look(centre, points, limitsOnly), figures);

    private static double Spread(IReadOnlyList<double> group)
    {
        double mean = group.Average();
        return Math.Sqrt(group.Sum(v => (v - mean) * (v - mean)) / (group.Count - 1));
    }

    private static ChartConstants Grouped(IReadOnlyList<string> labels, IReadOnlyList<IReadOnlyList<double>> groups)
    {
        Check(labels, groups.Count, FewestPoints);
        if (groups.Any(g => g.Count != groups[0].Count))
            throw new ArgumentException("Groups: wanted one size for all.", nameof(groups));
        foreach (IReadOnlyList<double> group in groups)
            CheckFinite(group);
        return ChartConstants.Of(groups[0].Count);
    }

    private static void Check(IReadOnlyList<string> labels, int points, int fewest)
    {
        if (points < fewest || labels.Count != points)
            throw new ArgumentException(Invariant($"{points} points and {labels.Count} labels; wanted at least {fewest} points, each with its label."), nameof(labels));
    }

    private static void CheckFinite(IReadOnlyList<double> values)
    {
        if (values.Any(v => !double.IsFinite(v)))
            throw new ArgumentException("A value is not finite.", nameof(values));
    }
}
