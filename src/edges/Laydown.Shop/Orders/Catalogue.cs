using Laydown.Plan.Costs;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;

namespace Laydown.Shop.Orders;

/// <summary>What the shop has: presses, inks, stocks, print conditions, rates.</summary>
/// <param name="ShopName">Name of the shop, for sheets and quotes.</param>
/// <param name="Folder">Folder the catalogue was read from; profiles lie in its sub-folder <c>profiles</c>.</param>
/// <param name="Presses">Presses.</param>
/// <param name="InkSets">Ink sets.</param>
/// <param name="Stocks">Stocks.</param>
/// <param name="Conditions">Print conditions.</param>
/// <param name="Rates">Rates.</param>
public sealed record Catalogue(
    string ShopName,
    string Folder,
    IReadOnlyList<PressDescription> Presses,
    IReadOnlyList<InkSet> InkSets,
    IReadOnlyList<Stock> Stocks,
    IReadOnlyList<PrintCondition> Conditions,
    ShopRates Rates);
