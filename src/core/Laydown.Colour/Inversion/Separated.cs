namespace Laydown.Colour.Inversion;

/// <summary>What a colour was turned into.</summary>
/// <param name="Distance">What is left between wanted and printed colour, in the weighted metric of CIEDE2000 frozen at the wanted
/// colour; 0 inside the gamut.</param>
/// <param name="Cost">What the search made least: squared distance plus the small price of other black than wanted.</param>
public readonly record struct Separated(double Distance, double Cost);
