using Laydown.Measures;
using Laydown.Plan.Costs;

namespace Laydown.Plan.Upkeep;

/// <summary>One way through a long stop.</summary>
/// <param name="Name">Its name for people.</param>
/// <param name="Lines">Every line and what is done with it.</param>
/// <param name="ShortRuns">Short runs; empty where the press stands all the time.</param>
/// <param name="FillAt">When lines are filled with storage fluid; null where none is.</param>
/// <param name="BackAt">When filling them with ink again begins; null where none is.</param>
/// <param name="ReadyAt">When the press can print again.</param>
/// <param name="DelayMinutes">How much later than planned the next run begins for it, minutes.</param>
/// <param name="Costs">Cost, line by line.</param>
/// <param name="Cost">Their sum.</param>
public sealed record LongStopOption(
    string Name,
    IReadOnlyList<StorageLine> Lines,
    IReadOnlyList<ShortRun> ShortRuns,
    DateTimeOffset? FillAt,
    DateTimeOffset? BackAt,
    DateTimeOffset ReadyAt,
    double DelayMinutes,
    IReadOnlyList<CostLine> Costs,
    Money Cost)
{
    /// <summary>Minutes of filling and filling back that lie outside the shifts: somebody stays, or comes earlier.</summary>
    public double OutsideMinutes { get; init; }
}
