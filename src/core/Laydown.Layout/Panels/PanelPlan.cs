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
    /// <summary>At butt joints, what each panel shows beyond its seams, mm; it is trimmed off at the seam. 0 for none.</summary>
    public double SeamBleedMm { get; init; }

    /// <summary>What a panel shows with what it shows beyond its seams, mm from the graphic's lower left corner.</summary>
    public RectMm Printed(Panel panel)
    {
        ArgumentNullException.ThrowIfNull(panel);
        RectMm part = panel.Part, grown = part.Grown(SeamBleedMm);
        double left = part.XMm > 1e-6 ? Math.Max(0, grown.XMm) : part.XMm, low = part.YMm > 1e-6 ? Math.Max(0, grown.YMm) : part.YMm;
        double right = part.RightMm < Graphic.WidthMm - 1e-6 ? Math.Min(Graphic.WidthMm, grown.RightMm) : part.RightMm;
        double top = part.TopMm < Graphic.HeightMm - 1e-6 ? Math.Min(Graphic.HeightMm, grown.TopMm) : part.TopMm;
        return new(left, low, right - left, top - low);
    }

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
