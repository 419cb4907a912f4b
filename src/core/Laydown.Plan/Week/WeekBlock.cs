namespace Laydown.Plan.Week;

/// <summary>Care in the plan; minutes since its start.</summary>
/// <param name="PressId">The press.</param>
/// <param name="What">What is done.</param>
/// <param name="Start">When it begins.</param>
/// <param name="End">When it is done.</param>
/// <param name="RunId">The run that pauses for it; null where none does.</param>
/// <param name="CareId">The care it is; null for what a long stop needs.</param>
/// <param name="Due">When it is due at the latest; under 0 before the start of the plan, null for what a long stop needs.</param>
/// <param name="ByUse">Whether use makes it due, such as ink or hours of printing; else time.</param>
public sealed record WeekBlock(string PressId, string What, int Start, int End, string? RunId, string? CareId = null, int? Due = null, bool ByUse = false);
