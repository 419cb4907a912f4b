namespace Laydown.Artwork.Pages;

/// <summary>File formats the shop takes.</summary>
public enum ArtworkKind
{
    /// <summary>PDF.</summary>
    Pdf,

    /// <summary>TIFF, BigTIFF included.</summary>
    Tiff,

    /// <summary>PNG.</summary>
    Png,

    /// <summary>JPEG.</summary>
    Jpeg,

    /// <summary>SVG.</summary>
    Svg,
}
