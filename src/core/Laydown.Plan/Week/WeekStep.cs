namespace Laydown.Plan.Week;

/// <summary>A step after the press.</summary>
/// <param name="Name">Such as <c>cut</c> or <c>rest before stacking</c>.</param>
/// <param name="Minutes">How long; 0 or more.</param>
/// <param name="Unattended">Whether it goes on while the shop is shut, such as resting; else it takes open time of finishing, or of its bench. At a bench it begins in open time all the same.</param>
/// <param name="BenchId">The bench it is done at, where runs queue; null where there is always room.</param>
public sealed record WeekStep(string Name, int Minutes, bool Unattended, string? BenchId = null);
