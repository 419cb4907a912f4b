namespace Laydown.Plan.Week;

/// <summary>A press of the plan.</summary>
/// <param name="Id">The press.</param>
/// <param name="Open">When it is worked, sorted, apart; service windows are taken out already.</param>
/// <param name="State">What it is set for now; null where nobody knows.</param>
public sealed record WeekPress(string Id, IReadOnlyList<WeekSpan> Open, WeekTraits? State);
