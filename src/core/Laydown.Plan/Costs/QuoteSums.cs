using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>The sums of a quote by the shop's policy; they add up to the cent.</summary>
/// <param name="Lines">Each line as charged.</param>
/// <param name="SmallOrder">What is charged so that the net sum reaches the shop's least; nothing for most quotes.</param>
/// <param name="Net">Lines and small-order charge.</param>
/// <param name="Tax">Tax.</param>
/// <param name="Gross">Net and tax.</param>
public sealed record QuoteSums(IReadOnlyList<Money> Lines, Money SmallOrder, Money Net, Money Tax, Money Gross)
{
    /// <summary>Sums of prices that are exact to the cent.</summary>
    /// <param name="prices">One for each line that is priced; none gives nothing throughout.</param>
    /// <param name="rates">The shop's rates.</param>
    public static QuoteSums Of(IReadOnlyList<Money> prices, ShopRates rates)
    {
        QuotePolicy policy = rates.Policy ?? new();
        Money[] lines = [.. prices.Select(policy.Rounded)];
        var sum = Money.Sum(lines);
        Money small = lines.Length > 0 && policy.SmallestNet is { } least && sum < least ? least - sum : default;
        Money net = sum + small;
        Money tax = policy.TaxEachLine ? Money.Sum(lines.Append(small).Select(l => TaxOn(l, rates))) : TaxOn(net, rates);
        return new(lines, small, net, tax, net + tax);
    }

    private static Money TaxOn(Money amount, ShopRates rates) => Money.FromUnits(amount.Units * (decimal)rates.TaxPercent / 100m);
}
