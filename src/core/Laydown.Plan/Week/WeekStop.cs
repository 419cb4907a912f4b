namespace Laydown.Plan.Week;

/// <summary>A stop longer than the lines of a press may stand, with what is done about it; minutes since the start of the plan.</summary>
/// <param name="PressId">The press.</param>
/// <param name="Start">When the press was last used; under 0 before the start of the plan.</param>
/// <param name="End">When it would be used again if nothing were done about the stop.</param>
/// <param name="Ways">The ways through it, the cheapest first: that one is taken.</param>
public sealed record WeekStop(string PressId, int Start, int End, IReadOnlyList<WeekStopWay> Ways);
