namespace Laydown.Formats.Icc;

/// <summary>Rendering intents, numbered as in ICC.1.</summary>
public enum IccIntent
{
    /// <summary>Keeps the look of pictures.</summary>
    Perceptual = 0,

    /// <summary>Keeps colours relative to the white of the medium.</summary>
    RelativeColorimetric = 1,

    /// <summary>Keeps colours strong.</summary>
    Saturation = 2,

    /// <summary>Keeps colours as measured, the white of the medium included.</summary>
    AbsoluteColorimetric = 3,
}
