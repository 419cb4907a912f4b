namespace Laydown.Plan.Runs;

/// <summary>Which mode was picked and why.</summary>
/// <param name="ModeId">The mode.</param>
/// <param name="Reasons">Why it was picked, one sentence each.</param>
/// <param name="Rejected">Every other mode with the reason it was not picked.</param>
public sealed record ModeChoice(string ModeId, IReadOnlyList<string> Reasons, IReadOnlyList<RejectedMode> Rejected);
