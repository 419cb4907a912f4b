using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Plan.Runs;

/// <summary>How far the second printed face of a sheet may lie beside the first, once the sheet has cooled.</summary>
/// <param name="Turn">How the sheet is turned over.</param>
/// <param name="SideEdgeChanges">Whether another edge of the sheet comes to the side of the belt where the side lay was.</param>
/// <param name="FrontEdgeChanges">Whether another edge comes to the front lay.</param>
/// <param name="AcrossMm">How far apart across the belt, mm, not negative.</param>
/// <param name="AlongMm">How far apart along the feed, mm, not negative.</param>
/// <param name="Figures">How it was reckoned.</param>
public sealed record FaceRegister(
    SheetTurn Turn, bool SideEdgeChanges, bool FrontEdgeChanges, double AcrossMm, double AlongMm, IReadOnlyList<Figure> Figures)
{
    /// <summary>The larger of both, mm: what bleed and gaps have to cover.</summary>
    public double MostMm => Math.Max(AcrossMm, AlongMm);
}
