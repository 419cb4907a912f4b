namespace Laydown.Layout.Panels;

/// <summary>Which way a graphic is parted.</summary>
public enum PanelPattern
{
    /// <summary>Whatever gives the fewest panels, then the least length of stock, then the cheapest seams.</summary>
    Fewest,

    /// <summary>Upright panels side by side.</summary>
    Columns,

    /// <summary>Level panels one over the other.</summary>
    Rows,

    /// <summary>Columns and rows; all seams run through.</summary>
    Grid,

    /// <summary>Columns, each parted in rows of its own whose seams keep clear of those of the column to its left.</summary>
    Brick,
}
