namespace Laydown.Shop.Colour;

/// <summary>What a strength of white does.</summary>
/// <param name="StrengthPercent">Laydown asked, percent of the full one; over 100 % two planes share it.</param>
/// <param name="LaydownPercent">What acts, percent of one full laydown.</param>
/// <param name="HidingPercent">Contrast ratio, luminous, 45:0, over 0 and over 0.8: 100 hides all.</param>
/// <param name="ThroughPercent">Luminous transmittance of the film alone, percent of the lamp.</param>
public sealed record HidingStep(double StrengthPercent, double LaydownPercent, double HidingPercent, double ThroughPercent);
