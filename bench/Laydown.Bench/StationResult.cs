namespace Laydown.Bench;

/// <summary>What one station took.</summary>
/// <param name="Name">The station.</param>
/// <param name="WallSeconds">By the clock, s; the least of all rounds.</param>
/// <param name="CpuSeconds">Processor time of this process and its children, s; the least of all rounds.</param>
/// <param name="PeakMb">Most memory this process held, MiB; the most of all rounds.</param>
internal sealed record StationResult(string Name, double WallSeconds, double CpuSeconds, double PeakMb);
