namespace Laydown.Shop.Week;

/// <summary>Where a run stood in the plan kept last.</summary>
/// <param name="RunId">The run.</param>
/// <param name="PressId">Its press.</param>
/// <param name="Start">When it was to begin.</param>
public sealed record WeekStood(string RunId, string PressId, DateTimeOffset Start);
