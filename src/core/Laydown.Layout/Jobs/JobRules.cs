using Laydown.Layout.Sheets;

namespace Laydown.Layout.Jobs;

/// <summary>How a job is cut apart.</summary>
/// <param name="ToolMm">Diameter of the tool or width of the kerf, mm; 0 or more.</param>
/// <param name="GapMm">What is to be to spare between two pieces beside the tool, mm; 0 or more.</param>
/// <param name="Process">Free, or edge to edge; contours are always cut free.</param>
/// <param name="OffcutLeastSideMm">Shorter side a rest must have to be kept, mm.</param>
/// <param name="LeadInMm">Bare roll before the first piece, mm.</param>
/// <param name="LeadOutMm">Bare roll after the last piece, mm.</param>
public sealed record JobRules(
    double ToolMm = 0, double GapMm = 0, CutProcess Process = CutProcess.Free, double OffcutLeastSideMm = 150, double LeadInMm = 0, double LeadOutMm = 0)
{
    /// <summary>Least distance between two pieces, mm.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double ApartMm => ToolMm + GapMm;
}
