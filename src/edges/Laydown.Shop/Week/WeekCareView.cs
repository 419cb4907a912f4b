namespace Laydown.Shop.Week;

/// <summary>Care of a press in the week.</summary>
/// <param name="PressId">The press.</param>
/// <param name="What">What is done.</param>
/// <param name="Start">When it begins.</param>
/// <param name="End">When it is done.</param>
/// <param name="RunId">The run that pauses for it; null where none does.</param>
/// <param name="CareId">The rule of care it follows, or the top-up it is; null for what a long stop needs.</param>
public sealed record WeekCareView(string PressId, string What, DateTimeOffset Start, DateTimeOffset End, string? RunId, string? CareId = null);
