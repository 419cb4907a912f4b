namespace Laydown.Plan.Week;

/// <summary>A change of one press's order.</summary>
/// <param name="Press">The press.</param>
/// <param name="From">Runs before this place stay.</param>
/// <param name="Then">What comes next.</param>
/// <param name="Resume">And then the runs from this place on.</param>
internal readonly record struct WeekPart(int Press, int From, int[] Then, int Resume);
