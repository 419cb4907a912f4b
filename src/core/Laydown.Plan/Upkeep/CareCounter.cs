namespace Laydown.Plan.Upkeep;

/// <summary>When a care task was last done, and what has passed since.</summary>
/// <param name="RuleId">The rule.</param>
/// <param name="LastDone">When it was last done.</param>
/// <param name="PrintHours">Hours of printing since then, as counted when the state was read.</param>
/// <param name="Ml">Ink since then, ml, of the rule's tank or of all.</param>
public sealed record CareCounter(string RuleId, DateTimeOffset LastDone, double PrintHours = 0, double Ml = 0);
