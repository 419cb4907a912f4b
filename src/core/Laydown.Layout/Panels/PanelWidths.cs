namespace Laydown.Layout.Panels;

/// <summary>How wide the panels of a graphic are to be.</summary>
public enum PanelWidths
{
    /// <summary>Alike to 1 mm; the last may lack the fraction of a millimetre that the graphic has.</summary>
    Equal,

    /// <summary>Free: what the seams want comes first, then widths as alike as can be.</summary>
    Free,

    /// <summary>As wide as the stock takes, and the rest last.</summary>
    FullAndRest,

    /// <summary>Widths that were given, in order from the left (from the bottom for rows).</summary>
    Given,
}
