using Laydown.Measures;

namespace Laydown.Artwork.Pages;

/// <summary>A bar code found on a page.</summary>
/// <param name="Symbology">Such as <c>EAN-13</c> or <c>QR</c>.</param>
/// <param name="Text">What it says.</param>
/// <param name="Place">Where, mm.</param>
/// <param name="ModuleMm">Width of the narrowest module, mm.</param>
/// <param name="QuietZoneModules">Narrowest clear zone beside it, modules; null where it was not measured.</param>
public sealed record CodeUse(string Symbology, string Text, RectMm Place, double ModuleMm, double? QuietZoneModules);
