using Laydown.Colour.Spaces;

namespace Laydown.Shop.Colour;

/// <summary>A colour and the inks that print it.</summary>
/// <param name="Name">Name of the row; may be empty.</param>
/// <param name="Wanted">Colour wanted, D50, 2° observer, against the perfect diffuser.</param>
/// <param name="Inks">Inks, parts of one full ink, inside the limits.</param>
/// <param name="Predicted">What they will look like.</param>
/// <param name="DeltaE00">Between the two.</param>
/// <param name="InGamut">Whether the colour can be printed: predicted within half a ΔE00.</param>
public sealed record SeparatedColour(string Name, Lab Wanted, IReadOnlyList<double> Inks, Lab Predicted, double DeltaE00, bool InGamut);
