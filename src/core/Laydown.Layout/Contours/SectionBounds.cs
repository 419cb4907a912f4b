namespace Laydown.Layout.Contours;

/// <summary>Bounds of the length between two cuts across a roll.</summary>
/// <param name="LeastMm">Shorter sections are lengthened, mm; 0 for none.</param>
/// <param name="LongestMm">Greatest length of a section, mm; 0 for any.</param>
public readonly record struct SectionBounds(double LeastMm, double LongestMm);
