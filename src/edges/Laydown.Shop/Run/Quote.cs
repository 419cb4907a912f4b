using Laydown.Measures;
using Laydown.Plan.Orders;

namespace Laydown.Shop.Run;

/// <summary>A quote for an order.</summary>
/// <param name="ShopName">Who quotes.</param>
/// <param name="Order">For what.</param>
/// <param name="Date">Day of the quote.</param>
/// <param name="ValidUntil">Last day it holds.</param>
/// <param name="Currency">Currency.</param>
/// <param name="Lines">One line for each item; with <paramref name="SmallOrder"/> they add up to <paramref name="Net"/>.</param>
/// <param name="Net">Without tax.</param>
/// <param name="TaxPercent">Tax rate, percent.</param>
/// <param name="Tax">Tax.</param>
/// <param name="Gross">With tax.</param>
/// <param name="SmallOrder">Charge of a small order: part of <paramref name="Net"/> beside the lines.</param>
public sealed record Quote(
    string ShopName,
    Order Order,
    DateOnly Date,
    DateOnly ValidUntil,
    string Currency,
    IReadOnlyList<QuoteLine> Lines,
    Money Net,
    double TaxPercent,
    Money Tax,
    Money Gross,
    Money SmallOrder = default);
