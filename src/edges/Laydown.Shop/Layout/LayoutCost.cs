using Laydown.Measures;

namespace Laydown.Shop.Layout;

/// <summary>What a layout costs, in the mode the run has.</summary>
/// <param name="Media">Boards or roll.</param>
/// <param name="Cost">All of the run.</param>
/// <param name="Price">Price without tax.</param>
/// <param name="Minutes">Time at the press, minutes.</param>
public sealed record LayoutCost(Money Media, Money Cost, Money Price, double Minutes);
