namespace Laydown.Plan.Log;

/// <summary>Learns from the log how far estimates are off, for each press × mode × stock, and how surely the next run can be told.</summary>
/// <remarks>
/// ln(actual / estimate) of a run = shop + (press × mode) + stock + chance, each normal [Gelman2013]. With the spreads of <see cref="EstimateSpreads"/> the belief of each
/// group follows exactly from its own runs and, through their common parents, from all others: many runs speak for themselves, few lean on the others of their press and
/// mode, none on the shop. The range of the next run is Student's t about that mean with the group's own spread shrunk to that of all.
/// Runs that took over five times the estimate, or under a fifth, are set aside and counted: something other than the run was timed.
/// </remarks>
public sealed class EstimateModel
{
    /// <summary>Chance with which the next run lies in the range.</summary>
    public const double RangeChance = 0.9;

    /// <summary>Most runs of one press × mode × stock that are learnt from: the last ones.</summary>
    public const int MostOfGroup = 60;

    /// <summary>How many runs the words "last such runs" look back on.</summary>
    public const int Lately = 14;

    private const double MostRatio = 5;
    private const double MostPooled = 20;

    private readonly EstimateSpreads spreads;
    private readonly Dictionary<(string PressId, string ModeId), List<EstimateGroup>> branches;

    private EstimateModel(IReadOnlyList<EstimateGroup> groups, int setAside)
    {
        Groups = groups;
        SetAside = setAside;
        spreads = EstimateSpreads.Of(groups);
        branches = groups.GroupBy(g => g.Branch).ToDictionary(b => b.Key, b => b.ToList());
    }

    /// <summary>Runs set aside.</summary>
    public int SetAside { get; }

    /// <summary>Runs learnt from.</summary>
    public int Runs => Groups.Sum(g => g.Count);

    private IReadOnlyList<EstimateGroup> Groups { get; }

    /// <summary>Learns.</summary>
    /// <param name="cases">What was estimated and what it came to, oldest first.</param>
    /// <exception cref="ArgumentException">An estimate or an actual that is not over 0.</exception>
    public static EstimateModel Learn(IEnumerable<EstimateCase> cases)
    {
        List<EstimateCase> all = [.. cases];
        if (all.FirstOrDefault(c => !(c.Estimate > 0) || !(c.Actual > 0) || !double.IsFinite(c.Actual / c.Estimate)) is { } bad)
            throw new ArgumentException(Invariant($"{bad}: wanted an estimate and an actual over 0."), nameof(cases));
        List<EstimateCase> kept = [.. all.Where(c => c.Actual / c.Estimate is >= 1 / MostRatio and <= MostRatio)];
        return new(
            [.. kept.GroupBy(c => (c.PressId, c.ModeId, c.StockId)).OrderBy(g => g.Key.PressId, StringComparer.Ordinal)
                .ThenBy(g => g.Key.ModeId, StringComparer.Ordinal).ThenBy(g => g.Key.StockId, StringComparer.Ordinal)
                .Select(g => new EstimateGroup((g.Key.PressId, g.Key.ModeId), g.Key.StockId, [.. g.Select(c => Math.Log(c.Actual / c.Estimate)).TakeLast(MostOfGroup)]))],
            all.Count - kept.Count);
    }

    /// <summary>Corrections of every press × mode × stock that was run.</summary>
    public IReadOnlyList<EstimateCorrection> All() => [.. Groups.Select(g => For(g.Branch.PressId, g.Branch.ModeId, g.StockId))];

    /// <summary>The correction of a press × mode × stock, run before or not.</summary>
    public EstimateCorrection For(string pressId, string modeId, string stockId)
    {
        EstimateGroup? group = branches.GetValueOrDefault((pressId, modeId))?.FirstOrDefault(g => string.Equals(g.StockId, stockId, StringComparison.Ordinal));
        Belief others = FromOthers(pressId, modeId, group);
        Belief mean = group is null ? others : others + Belief.Of(group.Mean, spreads.Run / group.Count);

        // The group's own spread, shrunk to that of all groups.
        double pooled = Math.Min(MostPooled, spreads.RunFreedom), freedom = pooled + Math.Max(0, (group?.Count ?? 0) - 1);
        double run = ((pooled * spreads.Run) + (group?.Squares ?? 0)) / freedom;
        double reach = StudentT.Value((1 + RangeChance) / 2, freedom) * Math.Sqrt(run + mean.Variance);
        double[] lately = [.. (group?.Logs ?? []).TakeLast(Lately).Select(Math.Exp)];
        return new(
            pressId, modeId, stockId, Math.Exp(mean.Mean), Math.Exp(mean.Mean - reach), Math.Exp(mean.Mean + reach), RangeChance, group?.Count ?? 0, Runs,
            lately.Length > 0 ? lately.Min() : null, lately.Length > 0 ? lately.Max() : null, lately.Length, Because(group, others, mean, run, freedom));
    }

    private static string Because(EstimateGroup? group, Belief others, Belief mean, double run, double freedom)
    {
        string own = group is null ? "no run of its own" : Invariant($"{group.Count} of its own with mean {group.Mean:+0.000;-0.000}");
        return Invariant($"ln(actual/estimate): {own}, the others say {others.Mean:+0.000;-0.000} ± {Math.Sqrt(others.Variance):0.000}; together {mean.Mean:+0.000;-0.000} ± {Math.Sqrt(mean.Variance):0.000}, one run ± {Math.Sqrt(run):0.000}, t with {freedom:0} degrees of freedom");
    }

    // What the shop, the press with its mode and its other stocks say of a stock; its own runs are left out.
    private Belief FromOthers(string pressId, string modeId, EstimateGroup? own)
    {
        List<EstimateGroup>? branch = branches.GetValueOrDefault((pressId, modeId));
        var shop = Belief.Of(0, EstimateSpreads.Shop);
        foreach ((var key, List<EstimateGroup> groups) in branches)
            if (branch is null || key != (pressId, modeId))
                shop += Sum(groups, null).Widened(spreads.Branch);
        Belief parent = shop.Widened(spreads.Branch) + Sum(branch ?? [], own);
        return parent.Widened(spreads.Stock);
    }

    private Belief Sum(List<EstimateGroup> groups, EstimateGroup? without) => groups.Where(g => !ReferenceEquals(g, without))
        .Aggregate(default(Belief), (sum, g) => sum + Belief.Of(g.Mean, (spreads.Run / g.Count) + spreads.Stock));
}
