namespace Laydown.Shop.Week;

/// <summary>One change to the week.</summary>
/// <param name="Kind"><c>put</c>, <c>let</c>, <c>lock</c> or <c>unlock</c>.</param>
/// <param name="Runs">The runs; one for all but <c>lock</c>.</param>
/// <param name="At">When a run that is put begins, by the shop's clock.</param>
public sealed record WeekChange(string Kind, IReadOnlyList<string> Runs, DateTime? At = null);
