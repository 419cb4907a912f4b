namespace Laydown.Plan.Week;

/// <summary>A window in which a press is looked after; its time is no part of the press's open spans.</summary>
/// <param name="Start">First minute.</param>
/// <param name="End">The minute after the last; over the start.</param>
/// <param name="What">What is done.</param>
/// <param name="MayPause">Whether a run may stand over it and go on after.</param>
public sealed record WeekWindow(int Start, int End, string What, bool MayPause = false);
