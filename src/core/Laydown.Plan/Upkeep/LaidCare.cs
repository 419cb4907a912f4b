namespace Laydown.Plan.Upkeep;

/// <summary>Care of a press as the week laid it, so that both tell the same: up to its end nothing else is planned, from there on care is planned as for a press that stands.</summary>
/// <param name="Until">Up to when it was laid: the end of the last run of the press.</param>
/// <param name="Tasks">Care, and top-ups of tanks that are not topped up while the press prints; earliest first.</param>
/// <param name="Stops">Stops longer than the lines may stand; null for none.</param>
public sealed record LaidCare(DateTimeOffset Until, IReadOnlyList<LaidTask> Tasks, IReadOnlyList<LaidStop>? Stops = null);
