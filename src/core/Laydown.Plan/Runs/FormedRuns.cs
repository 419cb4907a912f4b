namespace Laydown.Plan.Runs;

/// <summary>What came of forming runs.</summary>
/// <param name="Runs">Runs, earliest due first.</param>
/// <param name="Unformed">Items that no press can print.</param>
public sealed record FormedRuns(IReadOnlyList<FormedRun> Runs, IReadOnlyList<UnformedItem> Unformed);
