using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>A quote to be reckoned from a file alone: what each item takes is told, not planned.</summary>
/// <param name="ShopName">Who quotes.</param>
/// <param name="OrderId">Number of the order or enquiry.</param>
/// <param name="Customer">For whom.</param>
/// <param name="Day">Day of the quote.</param>
/// <param name="Rates">The shop's rates.</param>
/// <param name="PressPerHour">An hour of the press.</param>
/// <param name="Items">What is quoted; each id once.</param>
/// <param name="Quantities">Other quantities to price each item at; null for none.</param>
/// <param name="Note">Words of the customer, or null.</param>
public sealed record QuoteJob(
    string ShopName, string OrderId, string Customer, DateOnly Day, ShopRates Rates, Money PressPerHour, IReadOnlyList<QuoteJobItem> Items,
    IReadOnlyList<int>? Quantities = null, string? Note = null);
