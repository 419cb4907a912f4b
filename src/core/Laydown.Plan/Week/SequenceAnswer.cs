namespace Laydown.Plan.Week;

/// <summary>An order of jobs and its cost.</summary>
/// <param name="Order">Places of the jobs in the problem, first to last; each once.</param>
/// <param name="Cost">Sum over jobs of weight × lateness, where a job ready before it is due is not late.</param>
public sealed record SequenceAnswer(IReadOnlyList<int> Order, long Cost);
