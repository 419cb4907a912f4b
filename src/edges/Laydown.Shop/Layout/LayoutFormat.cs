namespace Laydown.Shop.Layout;

/// <summary>Files a layout is written as.</summary>
public enum LayoutFormat
{
    /// <summary>The layout itself.</summary>
    Json,

    /// <summary>Cut paths, one sheet a file.</summary>
    Svg,

    /// <summary>Cut paths, one sheet a file, release 12.</summary>
    Dxf,

    /// <summary>Cut paths, one sheet a page.</summary>
    Pdf,
}
