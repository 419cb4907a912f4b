namespace Laydown.Web.Design;

/// <summary>Line and mark of a series. Each differs in dash or shape too, so that colour only supports.</summary>
public enum PlotLook
{
    /// <summary>Full line, round mark.</summary>
    Plain,

    /// <summary>Broken line, open round mark.</summary>
    Second,

    /// <summary>Accent.</summary>
    Act,

    /// <summary>Caution, triangle.</summary>
    Warn,

    /// <summary>Beyond a limit, square.</summary>
    Stop,

    /// <summary>Cyan ink.</summary>
    Cyan,

    /// <summary>Magenta ink.</summary>
    Magenta,

    /// <summary>Yellow ink.</summary>
    Yellow,

    /// <summary>Black ink.</summary>
    Black,

    /// <summary>Light cyan ink.</summary>
    LightCyan,

    /// <summary>Light magenta ink.</summary>
    LightMagenta,
}
