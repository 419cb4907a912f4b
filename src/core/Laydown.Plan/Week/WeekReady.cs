namespace Laydown.Plan.Week;

/// <summary>When a printed run leaves its last bench.</summary>
/// <param name="RunId">The run.</param>
/// <param name="Ready">When all steps are done; under 0 before the start of the plan.</param>
/// <param name="Late">Minutes after it was due; 0 where it is in time.</param>
public sealed record WeekReady(string RunId, int Ready, int Late);
