namespace Laydown.Plan.Week;

/// <summary>A run in the plan; minutes since its start.</summary>
/// <param name="RunId">The run.</param>
/// <param name="PressId">Its press.</param>
/// <param name="SetUpStart">When set-up begins.</param>
/// <param name="SetUpMinutes">Minutes of set-up.</param>
/// <param name="Start">When printing begins.</param>
/// <param name="End">When printing is done.</param>
/// <param name="Ready">When all steps after the press are done.</param>
/// <param name="Late">Minutes ready after it was due; 0 where it is in time.</param>
/// <param name="Parts">Spans in which the press works on it, set-up included: more than one where it is paused.</param>
/// <param name="BeyondCalendar">Whether it ends after the last open span known: its times are a guess then.</param>
/// <param name="SetUpBecause">How the set-up adds up.</param>
public sealed record WeekPlace(
    string RunId, string PressId, int SetUpStart, int SetUpMinutes, int Start, int End, int Ready, int Late, IReadOnlyList<WeekSpan> Parts, bool BeyondCalendar,
    string SetUpBecause = "");
