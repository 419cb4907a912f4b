using Laydown.Colour.Spaces;

namespace Laydown.Shop.Colour;

/// <summary>A mixture and its colour.</summary>
/// <param name="Name">Name of the row; may be empty.</param>
/// <param name="Inks">Inks, parts of one full ink, 0 to 1.</param>
/// <param name="Lab">Predicted colour, D50, 2° observer, against the perfect diffuser.</param>
public sealed record PredictedColour(string Name, IReadOnlyList<double> Inks, Lab Lab);
