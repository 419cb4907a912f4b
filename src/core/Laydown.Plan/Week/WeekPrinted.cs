namespace Laydown.Plan.Week;

/// <summary>A run that is printed and still goes over benches, where it takes room.</summary>
/// <param name="RunId">The run; none of those to be planned.</param>
/// <param name="End">When it was printed; under 0 before the start of the plan.</param>
/// <param name="Due">When all steps should be done.</param>
/// <param name="Steps">Steps after the press, in turn.</param>
/// <param name="Weight">What a minute of lateness costs, 0 to 1000.</param>
public sealed record WeekPrinted(string RunId, int End, int Due, IReadOnlyList<WeekStep> Steps, int Weight = 1);
