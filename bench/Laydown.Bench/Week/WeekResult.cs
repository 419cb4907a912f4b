namespace Laydown.Bench.Week;

/// <summary>What the bench of sequences found.</summary>
/// <param name="Bench"><c>week</c>.</param>
/// <param name="BudgetSeconds">Time for each instance, s.</param>
/// <param name="ByProcessor">Whether that is processor time of each worker.</param>
/// <param name="Workers">Threads.</param>
/// <param name="Seed">Seed of the search.</param>
/// <param name="Sample">Every so manieth instance.</param>
/// <param name="Date">Day of the run.</param>
/// <param name="Rows">Instances.</param>
/// <param name="CpuSeconds">Processor time of all, s.</param>
/// <param name="Checksum">Hash over all values.</param>
internal sealed record WeekResult(
    string Bench, double BudgetSeconds, bool ByProcessor, int Workers, int Seed, int Sample, string Date, IReadOnlyList<WeekRow> Rows, double CpuSeconds,
    string Checksum)
{
    private const long Large = 1000;

    /// <summary>Rows whose order the checker refused.</summary>
    public int Failed => Rows.Count(r => r.Fault is not null);

    /// <summary>Instances with an optimum above 1000.</summary>
    public int LargeCount => Rows.Count(r => r.Best > Large);

    /// <summary>Mean gap over instances with an optimum above 1000, percent; a failed one counts as 100 % over. Null where there is none.</summary>
    public double? MeanGapPercent => LargeCount == 0 ? null : Rows.Where(r => r.Best > Large).Average(r => r.Fault is null ? r.GapPercent!.Value : 100);

    /// <summary>How many optima were met.</summary>
    public int Met => Rows.Count(r => r.IsBest);

    /// <summary>The same among optima above 1000.</summary>
    public int MetLarge => Rows.Count(r => r.IsBest && r.Best > Large);

    /// <summary>How many optima are known.</summary>
    public int Known => Rows.Count(r => r.Best is not null);
}
