namespace Laydown.Plan.Week;

/// <summary>A step of a run at a bench; minutes since the start of the plan.</summary>
/// <param name="RunId">The run.</param>
/// <param name="BenchId">The bench.</param>
/// <param name="Place">Its place there, from 0.</param>
/// <param name="Step">What is done.</param>
/// <param name="Come">When it comes there.</param>
/// <param name="Start">When work on it begins.</param>
/// <param name="End">When it is done.</param>
/// <param name="Parts">Spans in which it is worked on: more than one where the place shuts meanwhile.</param>
public sealed record WeekVisit(string RunId, string BenchId, int Place, string Step, int Come, int Start, int End, IReadOnlyList<WeekSpan> Parts);
