namespace Laydown.Shop.Proof;

/// <summary>What is at one pixel of a look.</summary>
/// <param name="XPx">Pixel from the left, from 0.</param>
/// <param name="YPx">Pixel from the top, from 0.</param>
/// <param name="XMm">Its middle from the left edge of the finished piece, mm; under 0 in the bleed.</param>
/// <param name="YMm">From its top edge, mm.</param>
/// <param name="FirstNm">First band of the spectra, nm.</param>
/// <param name="StepNm">Width of a band, nm.</param>
/// <param name="Reflectance">By room light at 45:0, band by band.</param>
/// <param name="Transmittance">Luminance seen over that of the lamp, band by band.</param>
/// <param name="Day">By day.</param>
/// <param name="Night">With the lamp on.</param>
/// <param name="Layers">Inks, layer by layer in print order.</param>
public sealed record PointTold(
    int XPx,
    int YPx,
    double XMm,
    double YMm,
    int FirstNm,
    int StepNm,
    IReadOnlyList<double> Reflectance,
    IReadOnlyList<double> Transmittance,
    PointLook Day,
    PointLook Night,
    IReadOnlyList<PointLayer> Layers);
