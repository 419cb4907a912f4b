namespace Laydown.Formats.Icc;

/// <summary>Colour space of a profile or of pixels.</summary>
public enum IccSpace
{
    /// <summary>One channel, 255 = white.</summary>
    Gray,

    /// <summary>Red, green, blue.</summary>
    Rgb,

    /// <summary>Cyan, magenta, yellow, black; 255 = full ink.</summary>
    Cmyk,

    /// <summary>CIELAB, D50.</summary>
    Lab,

    /// <summary>Three inks (3CLR).</summary>
    Ink3,

    /// <summary>Four inks other than CMYK (4CLR).</summary>
    Ink4,

    /// <summary>Five inks (5CLR).</summary>
    Ink5,

    /// <summary>Six inks (6CLR).</summary>
    Ink6,

    /// <summary>Seven inks (7CLR).</summary>
    Ink7,

    /// <summary>Eight inks (8CLR).</summary>
    Ink8,

    /// <summary>A space the product does not take pixels in.</summary>
    Other,
}
