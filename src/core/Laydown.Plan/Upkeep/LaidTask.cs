namespace Laydown.Plan.Upkeep;

/// <summary>A piece of care as the week laid it: no run lies in it.</summary>
/// <param name="RuleId">The rule of care it follows; null for a top-up.</param>
/// <param name="TankId">The tank that is topped up; null for care.</param>
/// <param name="Due">When it is due at the latest.</param>
/// <param name="Start">When it begins.</param>
/// <param name="End">When it is done, after its start.</param>
/// <param name="RunId">The run that pauses for it; null where none does.</param>
/// <param name="ByUse">Whether ink or hours of printing make it due; else time.</param>
public sealed record LaidTask(string? RuleId, string? TankId, DateTimeOffset Due, DateTimeOffset Start, DateTimeOffset End, string? RunId, bool ByUse);
