namespace Laydown.Plan.Week;

/// <summary>A press of the plan.</summary>
/// <param name="Id">The press.</param>
/// <param name="Open">When it is worked, sorted, apart; maintenance windows are taken out already.</param>
/// <param name="State">What it is set for now; null where nobody knows.</param>
/// <param name="Windows">Maintenance windows; null for none. No run goes across one but where it may pause there, or is longer than all open time between two of them.</param>
/// <param name="Care">Care it needs again and again; null for none.</param>
/// <param name="Stand">How long it may stand; null where that does not count.</param>
public sealed record WeekPress(
    string Id, IReadOnlyList<WeekSpan> Open, WeekTraits? State, IReadOnlyList<WeekWindow>? Windows = null, IReadOnlyList<WeekCare>? Care = null, WeekStand? Stand = null);
