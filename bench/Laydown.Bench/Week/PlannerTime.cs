namespace Laydown.Bench.Week;

/// <summary>How long a large week takes.</summary>
/// <param name="Name">What it is.</param>
/// <param name="FirstSeconds">First answer with its reasons, wall time, s.</param>
/// <param name="AgainSeconds">Planned again from a plan that stands, with reasons, wall time, s.</param>
/// <param name="First">Cost of the first answer.</param>
/// <param name="Planned">Cost of the plan.</param>
/// <param name="Again">Cost after planning again.</param>
internal sealed record PlannerTime(string Name, double FirstSeconds, double AgainSeconds, long First, long Planned, long Again);
