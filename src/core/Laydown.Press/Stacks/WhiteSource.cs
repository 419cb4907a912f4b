namespace Laydown.Press.Stacks;

/// <summary>Where the picture of a white, clear or block-out layer comes from.</summary>
public enum WhiteSource
{
    /// <summary>The whole piece, bleed included.</summary>
    Flood,

    /// <summary>Wherever the picture has ink.</summary>
    UnderImage,

    /// <summary>The more, the lighter the picture.</summary>
    Inverse,

    /// <summary>The file's alpha.</summary>
    Alpha,

    /// <summary>A named separation of the file.</summary>
    NamedSeparation,

    /// <summary>Another picture, read as a mask.</summary>
    MaskPicture,
}
