using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>The shop's rates.</summary>
/// <param name="Currency">Currency as printed, such as <c>EUR</c>.</param>
/// <param name="LabourPerHour">An hour of an operator.</param>
/// <param name="OverheadPercent">Overhead on cost, percent; counts where <paramref name="Overheads"/> tells no kinds.</param>
/// <param name="MarginPercent">Margin on the price before tax, percent, under 100.</param>
/// <param name="TaxPercent">Tax on the quote, percent.</param>
/// <param name="SpoilPercent">Extra material for spoilage, percent.</param>
/// <param name="FinishingRates">Minutes and material of each kind of finishing.</param>
/// <param name="QuoteValidDays">How long a quote holds, days.</param>
/// <param name="Policy">How quotes are rounded and taxed, what offcuts are worth, whether the log corrects times; null for the nearest cent, tax on the sum, nothing for offcuts, times as reckoned.</param>
/// <param name="Overheads">Kinds of overhead, each with its budget and what it is spread on; null for <paramref name="OverheadPercent"/> of cost.</param>
public sealed record ShopRates(
    string Currency,
    Money LabourPerHour,
    double OverheadPercent,
    double MarginPercent,
    double TaxPercent,
    double SpoilPercent,
    IReadOnlyList<FinishingRate> FinishingRates,
    int QuoteValidDays,
    QuotePolicy? Policy = null,
    IReadOnlyList<OverheadRate>? Overheads = null);
