using Laydown.Layout.Sheets;

namespace Laydown.Layout.Jobs;

/// <summary>How a job is cut apart.</summary>
/// <param name="ToolMm">Diameter of the tool or width of the kerf, mm; 0 or more.</param>
/// <param name="GapMm">What is to be to spare between two pieces beside the tool, mm; 0 or more.</param>
/// <param name="Process">Free, or edge to edge; contours are always cut free.</param>
/// <param name="OffcutLeastSideMm">Shorter side a rest must have to be kept, mm.</param>
/// <param name="LeadInMm">Bare roll before the first piece, mm.</param>
/// <param name="LeadOutMm">Bare roll after the last piece, mm.</param>
/// <param name="LeastSectionMm">Least length between two cuts across a roll, mm; shorter sections are lengthened; 0 for none.</param>
/// <param name="LongestSectionMm">Greatest length between two cuts across a roll, mm; 0 for any.</param>
/// <param name="RollsSideBySide">1 for one roll on the press at a time, 2 for two side by side that advance together.</param>
/// <param name="CentreGapMm">Least distance between two rolls side by side, mm.</param>
/// <param name="AcrossMm">Width that the press takes, of one roll or of two with the gap between them, mm.</param>
/// <param name="PricePerMetre">What a metre of advance costs, the press's time, in the unit of the prices of stocks.</param>
public sealed record JobRules(
    double ToolMm = 0, double GapMm = 0, CutProcess Process = CutProcess.Free, double OffcutLeastSideMm = 150, double LeadInMm = 0, double LeadOutMm = 0,
    double LeastSectionMm = 0, double LongestSectionMm = 0, int RollsSideBySide = 1, double CentreGapMm = 0, double AcrossMm = 3200, double PricePerMetre = 0)
{
    /// <summary>Whether all boards are to carry one and the same layout, cut again and again until there are enough of each piece: rectangles on boards.</summary>
    /// <remarks>Of some pieces more are made than wanted: fewer than one for each board.</remarks>
    public bool OneLayout { get; init; }

    /// <summary>Least distance between two pieces, mm.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double ApartMm => ToolMm + GapMm;
}
