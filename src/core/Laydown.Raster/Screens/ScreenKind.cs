namespace Laydown.Raster.Screens;

/// <summary>How contone becomes dots.</summary>
public enum ScreenKind
{
    /// <summary>A threshold array for each ink; light and dark ink of one hue share an array as one tone.</summary>
    Arrays,

    /// <summary>The dark inks share one array: dots of the next ink begin where those of the ink before end, so they do not overlap while
    /// their sum allows.</summary>
    Intervals,

    /// <summary>Error diffusion: the finest detail, for small text and line art; slower than arrays.</summary>
    Diffusion,
}
