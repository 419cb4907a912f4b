namespace Laydown.Plan.Week;

/// <summary>A run put on a press by hand: it stays there, is not begun before the time told, and any wait beyond it weighs as much as a grave lateness.</summary>
/// <param name="RunId">The run.</param>
/// <param name="PressId">The press.</param>
/// <param name="Start">Its start, minutes.</param>
public sealed record WeekHold(string RunId, string PressId, int Start);
