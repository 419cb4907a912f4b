using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>One line of a cost sheet.</summary>
/// <param name="Name">What it pays for.</param>
/// <param name="Amount">The amount.</param>
/// <param name="Because">Quantity × rate, in one line.</param>
/// <param name="ItemId">The item it belongs to; null for what the run shares.</param>
public sealed record CostLine(string Name, Money Amount, string Because, string? ItemId);
