using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>Overhead that was really spent.</summary>
/// <param name="Name">Which kind of the shop's overhead it belongs to.</param>
/// <param name="Amount">How much, without tax, over 0.</param>
/// <param name="What">For what, such as <c>rent of November</c>.</param>
public sealed record OverheadSpent(string Name, Money Amount, string What);
