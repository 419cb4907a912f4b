namespace Laydown.Bench.Layout;

/// <summary>One instance, solved and judged.</summary>
/// <param name="Instance">Its name.</param>
/// <param name="Ours">Our value.</param>
/// <param name="Unit">Unit of the values.</param>
/// <param name="Best">Best published value, or null.</param>
/// <param name="Bound">A bound proven on the way, or null.</param>
/// <param name="Seconds">Wall time, s.</param>
/// <param name="CpuSeconds">Processor time of all threads, s.</param>
/// <param name="Fault">What the checker said first, or null where the layout is right.</param>
internal sealed record LayoutRow(string Instance, double Ours, string Unit, double? Best, double? Bound, double Seconds, double CpuSeconds, string? Fault)
{
    /// <summary>Ours over best less one, percent; null where there is no best value.</summary>
    public double? GapPercent => Best is > 0 ? 100 * ((Ours / Best.Value) - 1) : null;
}
