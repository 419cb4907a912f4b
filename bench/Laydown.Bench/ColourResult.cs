namespace Laydown.Bench;

/// <summary>Residuals of the colour rooms on public data, and their times.</summary>
/// <param name="Bench">Which bench.</param>
/// <param name="Rows">The figures.</param>
/// <param name="CpuSeconds">Processor time of all, s.</param>
/// <param name="PeakMb">Most memory held, MiB.</param>
/// <param name="Checksum">SHA-256 over all residuals, rounded to 1e-6: equal results, equal checksum.</param>
internal sealed record ColourResult(string Bench, IReadOnlyList<ColourRow> Rows, double CpuSeconds, double PeakMb, string Checksum);
