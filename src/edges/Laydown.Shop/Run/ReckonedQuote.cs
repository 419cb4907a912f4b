using Laydown.Plan.Costs;

namespace Laydown.Shop.Run;

/// <summary>A quote reckoned from a file, with how each of its lines came about.</summary>
/// <param name="Quote">The quote.</param>
/// <param name="Costs">Cost sheet of each item, in the order of the lines.</param>
public sealed record ReckonedQuote(Quote Quote, IReadOnlyList<CostSheet> Costs);
