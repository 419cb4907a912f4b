using Laydown.Measures;

namespace Laydown.Artwork.Pages;

/// <summary>Text of one size.</summary>
/// <param name="SizePt">Font size at the page's effective size, points.</param>
/// <param name="Sample">A few of its characters.</param>
/// <param name="Place">Where, mm.</param>
public sealed record TextUse(double SizePt, string Sample, RectMm Place);
