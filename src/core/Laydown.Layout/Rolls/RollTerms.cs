using Laydown.Layout.Sheets;

namespace Laydown.Layout.Rolls;

/// <summary>How rolls are printed and cut.</summary>
/// <param name="GapMm">Least distance between two printed rectangles, mm; 0 or more.</param>
/// <param name="LeadInMm">Bare length before the first piece, mm.</param>
/// <param name="LeadOutMm">Bare length after the last piece, mm.</param>
/// <param name="Process">Edge to edge: the roll is first cut across into sections. Free: anywhere.</param>
/// <param name="LeastSectionMm">Least length between two cuts across, mm; shorter sections are lengthened; 0 for none.</param>
/// <param name="LongestSectionMm">Greatest length between two cuts across, mm: table, take-up; 0 for none.</param>
/// <param name="SideBySide">1 for one roll, 2 for two side by side that advance together.</param>
/// <param name="CentreGapMm">Least distance between two rolls side by side, mm.</param>
/// <param name="AcrossMm">Width that the press takes, of one roll or of two with the gap between them, mm.</param>
/// <param name="PricePerMetre">What a metre of advance costs, the press's time; the unit of the stocks' prices.</param>
/// <param name="Media">The roll a piece must lie on, by its id, where media differ: id of the roll; pieces not named lie on any. Null for none.</param>
public sealed record RollTerms(
    double GapMm,
    double LeadInMm,
    double LeadOutMm,
    CutProcess Process,
    double LeastSectionMm = 0,
    double LongestSectionMm = 0,
    int SideBySide = 1,
    double CentreGapMm = 0,
    double AcrossMm = 3200,
    double PricePerMetre = 0,
    IReadOnlyDictionary<string, string>? Media = null);
