using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>From cost lines to a price: overhead by the shop's kinds, then margin.</summary>
public static class MarkUps
{
    /// <summary>The sheet of the lines, its price not yet shared over items.</summary>
    /// <param name="lines">Cost lines.</param>
    /// <param name="bases">What overhead can be spread on, by the sum of the lines.</param>
    /// <param name="rates">The shop's rates.</param>
    public static CostSheet On(IReadOnlyList<CostLine> lines, Func<Money, OverheadBases> bases, ShopRates rates)
    {
        var cost = Money.Sum(lines.Select(l => l.Amount));
        IReadOnlyList<OverheadLine> overheads = Overheads.On(rates, bases(cost));
        var overhead = Money.Sum(overheads.Select(o => o.Amount));
        Money price = Rates.PriceWithMargin(cost + overhead, rates.MarginPercent);
        return new(lines, cost, overhead, price - cost - overhead, price, [], overheads, rates.MarginPercent);
    }
}
