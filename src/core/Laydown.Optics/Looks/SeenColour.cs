using Laydown.Colour.Spaces;

namespace Laydown.Optics.Looks;

/// <summary>What a viewer sees at one spot.</summary>
/// <param name="CdPerM2">Tristimulus values in absolute terms: Y is the luminance, cd/m².</param>
/// <param name="Lab">The colour to the adapted eye, carried over to D50.</param>
/// <param name="Red">sRGB red, 0 to 255.</param>
/// <param name="Green">sRGB green, 0 to 255.</param>
/// <param name="Blue">sRGB blue, 0 to 255.</param>
public sealed record SeenColour(Xyz CdPerM2, Lab Lab, byte Red, byte Green, byte Blue);
