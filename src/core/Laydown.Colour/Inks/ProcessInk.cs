namespace Laydown.Colour.Inks;

/// <summary>The colour inks of a press, in the order of the channels of press files.</summary>
public enum ProcessInk
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
}
