using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>Cost and price of a run; its lines add up to its totals to the cent.</summary>
/// <param name="Lines">Cost lines; their sum is <paramref name="Cost"/>.</param>
/// <param name="Cost">Cost.</param>
/// <param name="Overhead">Overhead put on.</param>
/// <param name="Margin">Margin put on.</param>
/// <param name="Price">Cost + overhead + margin, without tax.</param>
/// <param name="ItemPrices">The price shared over the items; they add up to <paramref name="Price"/>.</param>
/// <param name="OverheadLines">Each kind of overhead; they add up to <paramref name="Overhead"/>. Null in sheets reckoned before they were kept.</param>
/// <param name="MarginPercent">Margin, percent of the price; null in sheets reckoned before it was kept.</param>
public sealed record CostSheet(
    IReadOnlyList<CostLine> Lines, Money Cost, Money Overhead, Money Margin, Money Price, IReadOnlyList<ItemPrice> ItemPrices,
    IReadOnlyList<OverheadLine>? OverheadLines = null, double? MarginPercent = null)
{
    /// <summary>How overhead and margin came about, in one line.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public string MarkUpWords
    {
        get
        {
            string overhead = OverheadLines is null ? "" : Invariant($" ({string.Join(", ", OverheadLines.Select(l => OverheadLines.Count == 1 ? l.Because : Invariant($"{l.Name} {l.Because}")))})");
            string margin = MarginPercent is { } percent ? Invariant($" ({percent:0.##} % of the price)") : "";
            return Invariant($"cost {Cost} + overhead {Overhead}{overhead} + margin {Margin}{margin}");
        }
    }
}
