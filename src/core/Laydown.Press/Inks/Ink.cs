using Laydown.Measures;

namespace Laydown.Press.Inks;

/// <summary>One ink of a set.</summary>
/// <param name="Role">What it is for.</param>
/// <param name="Name">Name for people and for InkNames of press files.</param>
/// <param name="DensityGPerMl">Mass of a millilitre, g.</param>
/// <param name="PricePerLitre">Price of a litre.</param>
/// <param name="SolidDensity">Optical density of one solid layer in transmission at its main band, without unit.</param>
/// <param name="Strength">For a light ink its colourant as a share of the full ink's, 0 to 1; 1 for the others.</param>
/// <param name="DoseMjPerCm2">UV dose it needs, mJ/cm².</param>
public sealed record Ink(
    InkRole Role, string Name, double DensityGPerMl, Money PricePerLitre, double SolidDensity, double Strength, double DoseMjPerCm2);
