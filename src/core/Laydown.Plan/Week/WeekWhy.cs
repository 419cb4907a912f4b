namespace Laydown.Plan.Week;

/// <summary>Why a run is late, and what would save it.</summary>
/// <param name="RunId">The run.</param>
/// <param name="Late">Minutes late.</param>
/// <param name="Because">What its time goes to, in sentences.</param>
/// <param name="Remedies">What would help, the most helpful first; empty where nothing tried does.</param>
public sealed record WeekWhy(string RunId, int Late, IReadOnlyList<string> Because, IReadOnlyList<WeekRemedy> Remedies);
