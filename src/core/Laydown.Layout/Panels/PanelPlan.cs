using Laydown.Measures;

namespace Laydown.Layout.Panels;

/// <summary>A graphic parted in panels.</summary>
/// <param name="Graphic">Printed size of the graphic, mm.</param>
/// <param name="Turned">Whether its panels are printed lying on their side.</param>
/// <param name="Panels">Panels in the order of printing and hanging; one where the graphic need not be parted.</param>
/// <param name="Seams">Where panels meet, in the order in which they are made.</param>
/// <param name="SeamCost">What the seams cost after the places kept out and wanted; 0 where nothing was asked, and for a plan read back from its parts.</param>
public sealed record PanelPlan(
    SizeMm Graphic, bool Turned, IReadOnlyList<Panel> Panels, IReadOnlyList<PanelSeam> Seams, long SeamCost)
{
    /// <summary>The plan that parts of a printed picture make, numbered in their order.</summary>
    /// <param name="graphic">Printed size of the graphic, mm.</param>
    /// <param name="turned">Whether they lie on their side.</param>
    /// <param name="parts">What each panel shows, in the order of hanging, mm from the graphic's lower left corner; parts of one column start at the same left edge.</param>
    public static PanelPlan Of(SizeMm graphic, bool turned, IReadOnlyList<RectMm> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        IReadOnlyList<Panel> panels = PanelGrid.Of(parts);
        return new(graphic, turned, panels, PanelSeams.Of(panels), 0);
    }
}
