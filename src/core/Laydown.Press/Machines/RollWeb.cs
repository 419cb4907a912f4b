namespace Laydown.Press.Machines;

/// <summary>How a press runs rolls, and how they are cut across behind it.</summary>
/// <param name="LeadMm">Bare roll before the first and after the last piece, mm; 0 or more (common practice, no source).</param>
/// <param name="LeastSectionMm">Least length between two cuts across, mm: what take-up or cutter can grip; shorter sections are lengthened; 0 for none.</param>
/// <param name="LongestSectionMm">Greatest length between two cuts across, mm: the table behind the press; 0 for none.</param>
public sealed record RollWeb(double LeadMm = 150, double LeastSectionMm = 0, double LongestSectionMm = 0);
