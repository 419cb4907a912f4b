using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>Cost and price of a run; its lines add up to its totals to the cent.</summary>
/// <param name="Lines">Cost lines; their sum is <paramref name="Cost"/>.</param>
/// <param name="Cost">Cost.</param>
/// <param name="Overhead">Overhead put on.</param>
/// <param name="Margin">Margin put on.</param>
/// <param name="Price">Cost + overhead + margin, without tax.</param>
/// <param name="ItemPrices">The price shared over the items; they add up to <paramref name="Price"/>.</param>
public sealed record CostSheet(
    IReadOnlyList<CostLine> Lines, Money Cost, Money Overhead, Money Margin, Money Price, IReadOnlyList<ItemPrice> ItemPrices);
