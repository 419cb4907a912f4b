namespace Laydown.Bench.Week;

/// <summary>A drawn week on one open press, planned, and the same jobs put in order by the search of sequences.</summary>
/// <param name="Runs">How many runs.</param>
/// <param name="Seed">Seed of the draw.</param>
/// <param name="First">Weighted lateness of the planner's first answer.</param>
/// <param name="Planned">The same with as many moves as planning takes.</param>
/// <param name="Sequence">The same as the search of sequences found it.</param>
/// <param name="Seconds">Wall time of planning, s.</param>
internal sealed record PlannerRow(int Runs, int Seed, long First, long Planned, long Sequence, double Seconds)
{
    /// <summary>Planned over the better of the two less one, percent; null where that is 0.</summary>
    public double? GapPercent => Math.Min(Planned, Sequence) is > 0 and var best ? 100.0 * (Planned - best) / best : null;
}
