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

    /// <summary>A space the product does not take pixels in.</summary>
    Other,
}
