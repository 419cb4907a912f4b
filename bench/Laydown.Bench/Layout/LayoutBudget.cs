namespace Laydown.Bench.Layout;

/// <summary>How long an instance may be worked on.</summary>
/// <param name="Seconds">What was asked for, s.</param>
/// <param name="Workers">Threads.</param>
/// <param name="Stop">Asked for when the time is over: wall time, or processor time of all threads.</param>
internal sealed record LayoutBudget(double Seconds, int Workers, CancellationToken Stop);
