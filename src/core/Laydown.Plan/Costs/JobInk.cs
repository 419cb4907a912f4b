using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>Ink of an item.</summary>
/// <param name="Name">Which.</param>
/// <param name="PricePerLitre">Price of a litre.</param>
/// <param name="OnceMl">For setting up, ml.</param>
/// <param name="EachMl">For each piece, ml.</param>
public sealed record JobInk(string Name, Money PricePerLitre, double OnceMl, double EachMl);
