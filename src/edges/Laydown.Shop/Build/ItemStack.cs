using Laydown.Measures;
using Laydown.Press.Stacks;

namespace Laydown.Shop.Build;

/// <summary>The stack of an item as it is shown.</summary>
/// <param name="ItemId">The item.</param>
/// <param name="StockId">Its stock.</param>
/// <param name="Stack">Its layers, with the sentences that say why.</param>
/// <param name="Findings">Where the order of layers cannot work, and advice; the worst first.</param>
/// <param name="DaySection">The section by day as SVG text.</param>
/// <param name="LitSection">The section with the lamp on as SVG text; null without a lamp.</param>
public sealed record ItemStack(
    string ItemId, string StockId, LayerStack Stack, IReadOnlyList<Finding> Findings, string DaySection, string? LitSection);
