namespace Laydown.Press.Conditions;

/// <summary>A named colour of the shop's library.</summary>
/// <param name="Id">Stable short name, lower case with hyphens.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Colour">The colour wanted, D50, 2° observer, against the perfect diffuser; from the spectrum where there is one.</param>
/// <param name="Spectrum">Reflectance wanted, or null.</param>
/// <param name="Source">Where the colour comes from: a sample read, a customer's sheet.</param>
public sealed record LibraryColour(string Id, string Name, LabColour Colour, LibrarySpectrum? Spectrum, string Source);
