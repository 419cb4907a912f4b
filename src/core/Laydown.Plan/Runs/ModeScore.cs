using Laydown.Measures;

namespace Laydown.Plan.Runs;

/// <summary>A mode with all it was judged by.</summary>
/// <param name="ModeId">The mode.</param>
/// <param name="Seconds">Time to scan one sheet, all layers and faces, s; 0 where it cannot be reckoned.</param>
/// <param name="PressCost">What the press costs in that time; null where it cannot be reckoned.</param>
/// <param name="Points">What it was judged by, in the order of weight; judging ends at the first it cannot do.</param>
public sealed record ModeScore(string ModeId, double Seconds, Money? PressCost, IReadOnlyList<ModePoint> Points);
