using Laydown.Measures;

namespace Laydown.Artwork.Pages;

/// <summary>A picture as placed on its page.</summary>
/// <param name="PixelWidth">Pixels across.</param>
/// <param name="PixelHeight">Pixels down.</param>
/// <param name="Place">Where it lies on the page, mm (bounding box).</param>
/// <param name="EffectivePpi">The lower of both directions at the page's effective size, ppi.</param>
/// <param name="ColourSpace">Its colour space.</param>
/// <param name="BitsPerComponent">Bits of each component.</param>
/// <param name="DeclaredPpi">What an image file says its resolution is; null where it says nothing and for pictures in PDF.</param>
public sealed record PlacedImage(
    int PixelWidth, int PixelHeight, RectMm Place, double EffectivePpi, string ColourSpace, int BitsPerComponent, double? DeclaredPpi);
