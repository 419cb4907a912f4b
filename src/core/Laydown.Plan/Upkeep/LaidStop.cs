namespace Laydown.Plan.Upkeep;

/// <summary>A long stop as the week decided about it.</summary>
/// <param name="Start">When the press was last used.</param>
/// <param name="End">When it would be used again if nothing were done about the stop: what is done may move the next run.</param>
public sealed record LaidStop(DateTimeOffset Start, DateTimeOffset End);
