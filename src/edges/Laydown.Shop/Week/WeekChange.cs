namespace Laydown.Shop.Week;

/// <summary>One change to the week.</summary>
/// <param name="Kind"><c>put</c>, <c>let</c>, <c>lock</c>, <c>unlock</c>, or <c>back</c> to take the last of these back.</param>
/// <param name="Runs">The runs; one for all but <c>lock</c>, none for <c>back</c>.</param>
/// <param name="At">When a run that is put begins, by the shop's clock.</param>
public sealed record WeekChange(string Kind, IReadOnlyList<string> Runs, DateTime? At = null);
