namespace Laydown.Bench.Layout;

/// <summary>All rows of a family in one variant.</summary>
/// <param name="Family">Family.</param>
/// <param name="Variant">Variant.</param>
/// <param name="BestFrom">What the best values are.</param>
/// <param name="Wanted">What is aimed at.</param>
/// <param name="Sum">How rows are summed up.</param>
/// <param name="BudgetSeconds">Time of each instance, s.</param>
/// <param name="ByProcessor">Whether that is processor time of each worker in place of wall time.</param>
/// <param name="Workers">Threads.</param>
/// <param name="Sample">Every so manieth instance was taken.</param>
/// <param name="Date">Day of the run.</param>
/// <param name="Rows">Rows.</param>
internal sealed record LayoutGroup(
    string Family, string Variant, string BestFrom, string Wanted, LayoutSum Sum, double BudgetSeconds, bool ByProcessor, int Workers, int Sample, string Date,
    IReadOnlyList<LayoutRow> Rows)
{
    /// <summary>Rows whose layout the checker refused.</summary>
    public int Failed => Rows.Count(r => r.Fault is not null);

    /// <summary>The summary over rows that are right and have a best value; null where none has.</summary>
    public double? Value
    {
        get
        {
            IReadOnlyList<(double Ours, double Best)> rows = [.. Rows.Where(r => r.Fault is null && (r.Best is > 0 || Sum == LayoutSum.Mean)).Select(r => (r.Ours, r.Best ?? 0))];
            if (rows.Count == 0)
                return null;

            return Sum switch
            {
                LayoutSum.GapOfSums => 100 * ((rows.Sum(r => r.Ours) / rows.Sum(r => r.Best)) - 1),
                LayoutSum.MeanGap => rows.Average(r => 100 * ((r.Ours / r.Best) - 1)),
                LayoutSum.MeanPointsOver or LayoutSum.MeanPointsUnder => rows.Average(r => r.Ours - r.Best),
                LayoutSum.MeanRatio => rows.Average(r => r.Ours / r.Best),
                _ => rows.Average(r => r.Ours),
            };
        }
    }

    /// <summary>The summary in words.</summary>
    public string Words => Value is not { } value ? "-" : Sum switch
    {
        LayoutSum.GapOfSums or LayoutSum.MeanGap => Invariant($"{value:+0.000;-0.000;0} %"),
        LayoutSum.MeanPointsOver or LayoutSum.MeanPointsUnder => Invariant($"{value:+0.00;-0.00;0} points"),
        LayoutSum.MeanRatio => Invariant($"{value:0.000} x"),
        _ => Invariant($"{value:0.00}"),
    };
}
