using Laydown.Measures;

namespace Laydown.Artwork.Pages;

/// <summary>A stroked line.</summary>
/// <param name="WidthMm">Its width at the page's effective size, mm; 0 is the thinnest the device can draw.</param>
/// <param name="Place">Where, mm.</param>
public sealed record LineUse(double WidthMm, RectMm Place);
