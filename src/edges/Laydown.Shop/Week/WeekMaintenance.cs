namespace Laydown.Shop.Week;

/// <summary>A maintenance window in the week.</summary>
/// <param name="PressId">The press.</param>
/// <param name="Start">Its start.</param>
/// <param name="End">Its end.</param>
/// <param name="What">What is done.</param>
/// <param name="By">Who does it; null where nobody is named.</param>
/// <param name="RunsMayPause">Whether a run may stand over it.</param>
public sealed record WeekMaintenance(string PressId, DateTimeOffset Start, DateTimeOffset End, string What, string? By, bool RunsMayPause);
