namespace Laydown.Plan.Log;

/// <summary>How far runs, stocks, and presses with their modes scatter about each other, as variances of ln(actual / estimate).</summary>
/// <remarks>
/// Each is a mean of what the log shows and of a default that counts as four observations, so that a young log changes little. What the log shows is by moments:
/// within groups, between groups of a branch, between branches [DerSimonian1986]. The defaults (15 % between runs, 10 % between stocks and between modes, 15 % for the
/// shop as a whole) are common practice, no source.
/// </remarks>
/// <param name="Run">Between runs of one press × mode × stock.</param>
/// <param name="RunFreedom">Observations behind it.</param>
/// <param name="Stock">Between stocks of one press × mode.</param>
/// <param name="Branch">Between presses × modes.</param>
internal sealed record EstimateSpreads(double Run, double RunFreedom, double Stock, double Branch)
{
    /// <summary>Of the shop as a whole about the estimate.</summary>
    public const double Shop = 0.15 * 0.15;

    private const double DefaultCounts = 4;
    private const double DefaultRun = 0.15 * 0.15;
    private const double DefaultBetween = 0.10 * 0.10;

    /// <summary>The spreads of groups.</summary>
    public static EstimateSpreads Of(IReadOnlyList<EstimateGroup> groups)
    {
        double within = groups.Sum(g => g.Squares), freedom = groups.Sum(g => g.Count - 1);
        double run = ((DefaultCounts * DefaultRun) + within) / (DefaultCounts + freedom);
        List<List<EstimateGroup>> branches = [.. groups.GroupBy(g => g.Branch).Select(b => b.ToList())];
        double stock = BetweenStocks(branches, run);
        return new(run, DefaultCounts + freedom, stock, BetweenBranches(branches, run, stock));
    }

    private static double BetweenStocks(List<List<EstimateGroup>> branches, double run)
    {
        double squares = 0, weights = 0, freedom = 0;
        foreach (List<EstimateGroup> branch in branches.Where(b => b.Count > 1))
        {
            double all = branch.Sum(g => g.Count), mean = branch.Sum(g => g.Count * g.Mean) / all;
            squares += branch.Sum(g => g.Count * (g.Mean - mean) * (g.Mean - mean));
            weights += all - (branch.Sum(g => (double)g.Count * g.Count) / all);
            freedom += branch.Count - 1;
        }

        return Shrunk(weights > 0 ? (squares - (freedom * run)) / weights : 0, freedom);
    }

    private static double BetweenBranches(List<List<EstimateGroup>> branches, double run, double stock)
    {
        List<Belief> means = [.. branches.Select(b => b.Aggregate(default(Belief), (sum, g) => sum + Belief.Of(g.Mean, (run / g.Count) + stock)))];
        double weights = means.Sum(m => m.Precision);
        if (means.Count < 2)
            return Shrunk(0, 0);
        double mean = means.Sum(m => m.Weighted) / weights;
        double scatter = means.Sum(m => m.Precision * (m.Mean - mean) * (m.Mean - mean));
        return Shrunk((scatter - (means.Count - 1)) / (weights - (means.Sum(m => m.Precision * m.Precision) / weights)), means.Count - 1);
    }

    private static double Shrunk(double seen, double freedom) =>
        ((DefaultCounts * DefaultBetween) + (freedom * Math.Max(0, seen))) / (DefaultCounts + freedom);
}
