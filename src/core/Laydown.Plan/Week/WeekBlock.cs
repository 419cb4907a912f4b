namespace Laydown.Plan.Week;

/// <summary>Care in the plan; minutes since its start.</summary>
/// <param name="PressId">The press.</param>
/// <param name="What">What is done.</param>
/// <param name="Start">When it begins.</param>
/// <param name="End">When it is done.</param>
/// <param name="RunId">The run that pauses for it; null where none does.</param>
public sealed record WeekBlock(string PressId, string What, int Start, int End, string? RunId);
