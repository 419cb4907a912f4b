namespace Laydown.Plan.Week;

/// <summary>A way through a long stop.</summary>
/// <param name="Name">Its name for people.</param>
/// <param name="Cents">What it costs, cents.</param>
/// <param name="ShortRuns">How many short runs it takes.</param>
public sealed record WeekStopWay(string Name, long Cents, int ShortRuns);
