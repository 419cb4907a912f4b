using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>What is bought in for an item.</summary>
/// <param name="Name">What, such as <c>frame</c> or <c>freight</c>.</param>
/// <param name="Once">Price once.</param>
/// <param name="Each">Price for each piece.</param>
public sealed record JobBought(string Name, Money Once, Money Each);
