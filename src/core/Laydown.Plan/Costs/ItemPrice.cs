using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>An item's share of a run's price.</summary>
/// <param name="ItemId">The item.</param>
/// <param name="Pieces">How many pieces.</param>
/// <param name="Price">For all of them, without tax.</param>
public sealed record ItemPrice(string ItemId, int Pieces, Money Price);
