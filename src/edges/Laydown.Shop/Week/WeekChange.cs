namespace Laydown.Shop.Week;

/// <summary>One change to the week.</summary>
/// <param name="Kind"><c>put</c>, <c>let</c>, <c>lock</c>, <c>unlock</c>, <c>afresh</c> to take a plan from scratch, <c>back</c> to take the last of these back, or <c>press</c> to put a run on another press.</param>
/// <param name="Runs">The runs; one for all but <c>lock</c>, none for <c>afresh</c> and <c>back</c>.</param>
/// <param name="At">When a run that is put begins, by the shop's clock.</param>
/// <param name="Press">The press a run is put on.</param>
/// <param name="By">Who puts it on another press.</param>
/// <param name="Reason">Why.</param>
public sealed record WeekChange(string Kind, IReadOnlyList<string> Runs, DateTime? At = null, string? Press = null, string? By = null, string? Reason = null);
