namespace Laydown.Press.Inks;

/// <summary>What an ink is for; the order is the order of channels in press files.</summary>
public enum InkRole
{
    /// <summary>Cyan.</summary>
    Cyan,

    /// <summary>Magenta.</summary>
    Magenta,

    /// <summary>Yellow.</summary>
    Yellow,

    /// <summary>Black.</summary>
    Black,

    /// <summary>Light cyan.</summary>
    LightCyan,

    /// <summary>Light magenta.</summary>
    LightMagenta,

    /// <summary>White.</summary>
    White,

    /// <summary>Clear.</summary>
    Clear,
}
