namespace Laydown.Bench.Week;

/// <summary>One instance, put in order and judged.</summary>
/// <param name="Instance">Its file.</param>
/// <param name="Jobs">How many jobs.</param>
/// <param name="Ours">Weighted lateness of our order, as the checker reckons it.</param>
/// <param name="Best">The proven optimum, or null where none is at hand.</param>
/// <param name="Seconds">Wall time, s.</param>
/// <param name="CpuSeconds">Processor time of all threads, s.</param>
/// <param name="LastGainSeconds">Wall time of the last gain, s.</param>
/// <param name="Fault">What the checker said first, or null where the order is right.</param>
internal sealed record WeekRow(
    string Instance, int Jobs, long Ours, long? Best, double Seconds, double CpuSeconds, double LastGainSeconds, string? Fault)
{
    /// <summary>Ours over the optimum less one, percent; null where there is no optimum above 0.</summary>
    public double? GapPercent => Best is > 0 ? 100.0 * (Ours - Best.Value) / Best.Value : null;

    /// <summary>Whether the optimum was met.</summary>
    public bool IsBest => Fault is null && Ours == Best;
}
