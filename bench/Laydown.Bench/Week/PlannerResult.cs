namespace Laydown.Bench.Week;

/// <summary>What the bench of the planner found.</summary>
/// <param name="Bench"><c>planner</c>.</param>
/// <param name="SequenceSeconds">Time of the search of sequences for each week, s.</param>
/// <param name="Date">Day of the run.</param>
/// <param name="Rows">Weeks on one open press.</param>
/// <param name="Times">Large weeks.</param>
/// <param name="CpuSeconds">Processor time of all, s.</param>
/// <param name="Checksum">Hash over the costs of all plans.</param>
internal sealed record PlannerResult(
    string Bench, double SequenceSeconds, string Date, IReadOnlyList<PlannerRow> Rows, IReadOnlyList<PlannerTime> Times, double CpuSeconds, string Checksum);
