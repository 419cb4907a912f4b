using Laydown.Colour.Spaces;

namespace Laydown.Shop.Proof;

/// <summary>What a viewer sees at one place in one light, and how near that is to what was aimed at.</summary>
/// <param name="Lab">The colour to the adapted eye, D50.</param>
/// <param name="CdPerM2">Luminance, cd/m².</param>
/// <param name="Wish">What was aimed at, or null where nothing was.</param>
/// <param name="DeltaE00">Difference to it, ΔE00, or null.</param>
/// <param name="Red">sRGB red of what is seen, 0 to 255.</param>
/// <param name="Green">Green.</param>
/// <param name="Blue">Blue.</param>
public sealed record PointLook(Lab Lab, double CdPerM2, Lab? Wish, double? DeltaE00, byte Red, byte Green, byte Blue);
