using Laydown.Measures;

namespace Laydown.Shop.Week;

/// <summary>A way through a long stop and what it costs.</summary>
/// <param name="Name">Its name for people.</param>
/// <param name="Cost">What it costs.</param>
/// <param name="ShortRuns">How many short runs it takes.</param>
public sealed record WeekStopCost(string Name, Money Cost, int ShortRuns);
