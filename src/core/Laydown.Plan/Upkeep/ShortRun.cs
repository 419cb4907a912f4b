namespace Laydown.Plan.Upkeep;

/// <summary>A short run that keeps the lines alive.</summary>
/// <param name="At">When it begins.</param>
/// <param name="End">When it ends.</param>
/// <param name="InShift">Whether it lies within a shift; else someone comes for it.</param>
public sealed record ShortRun(DateTimeOffset At, DateTimeOffset End, bool InShift);
