using Laydown.Measures;

namespace Laydown.Shop.Artwork;

/// <summary>What to render.</summary>
/// <param name="ArtworkPath">Full path of the file.</param>
/// <param name="Page">Page from 1.</param>
/// <param name="Printed">Printed size wanted, bleed included, mm. The page's trim box is scaled to the finished size.</param>
/// <param name="BleedMm">Bleed on each side within <paramref name="Printed"/>, mm. Missing bleed is filled by mirroring the edge.</param>
/// <param name="Ppi">Resolution wanted, ppi; pixels are round(mm × ppi / 25.4).</param>
/// <param name="ProfilePath">ICC profile (CMYK output) of the print condition.</param>
public sealed record RenderRequest(string ArtworkPath, int Page, SizeMm Printed, double BleedMm, double Ppi, string ProfilePath)
{
    /// <summary>
    /// Whether an image that is coarser than <see cref="Ppi"/> keeps its own pixels, each axis by itself: <see cref="Ppi"/> is then only the most, and the
    /// result tells the pixels. Pages made of curves are drawn at <see cref="Ppi"/> all the same.
    /// </summary>
    public bool OwnResolution { get; init; }
}
