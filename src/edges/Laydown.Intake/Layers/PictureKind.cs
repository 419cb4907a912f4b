namespace Laydown.Intake.Layers;

/// <summary>Formats a picture of a pair may have.</summary>
internal enum PictureKind
{
    /// <summary>A page of a PDF.</summary>
    Pdf,

    /// <summary>A drawing.</summary>
    Svg,

    /// <summary>PNG.</summary>
    Png,

    /// <summary>JPEG.</summary>
    Jpeg,

    /// <summary>TIFF.</summary>
    Tiff,

    /// <summary>WebP.</summary>
    WebP,
}
