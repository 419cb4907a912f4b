using Laydown.Measures;

namespace Laydown.Plan.Upkeep;

/// <summary>One way through a long stop, as it is decided.</summary>
/// <param name="Name">Its name for people.</param>
/// <param name="Stored">Places of the lines that are stored, in the order of the terms.</param>
/// <param name="ShortRuns">Short runs that keep the others alive, earliest first.</param>
/// <param name="BackAt">When filling stored lines with ink again begins; the end of the stop where none is stored.</param>
/// <param name="ReadyAt">When the press can print again: the end of the stop, or later.</param>
/// <param name="ShiftMinutes">Minutes of filling and filling back that lie within shifts.</param>
/// <param name="Cost">What it costs in all.</param>
public sealed record StopWay(
    string Name, IReadOnlyList<int> Stored, IReadOnlyList<ShortRun> ShortRuns, DateTimeOffset BackAt, DateTimeOffset ReadyAt, double ShiftMinutes, Money Cost);
