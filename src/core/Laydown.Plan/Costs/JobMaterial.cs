using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>Material of an item, waste included.</summary>
/// <param name="Name">What.</param>
/// <param name="Price">Price of one unit: a board, a metre, a kilogram.</param>
/// <param name="Once">Units for setting up, whatever the quantity.</param>
/// <param name="Each">Units for each piece; the waste around it counts.</param>
/// <param name="Whole">Whether only whole units can be used, such as boards: the sum is rounded up.</param>
public sealed record JobMaterial(string Name, Money Price, decimal Once, decimal Each, bool Whole = false);
