using Laydown.Core.Tests.Log;
using Laydown.Core.Tests.Press;
using Laydown.Measures;
using Laydown.Plan.Costs;
using Laydown.Plan.Log;
using Laydown.Plan.Orders;
using Laydown.Plan.Runs;
using Xunit;

namespace Laydown.Core.Tests.Plan;

/// <summary>Sums of quotes to the cent, over chance orders and policies.</summary>
public sealed class QuoteSumsLawTests
{
    [Fact]
    public void Every_order_reconciles_to_the_cent_from_lines_to_total()
    {
        Chance chance = new(20261126);
        for (int round = 0; round < 300; round++)
        {
            ShopRates rates = Works.ShopRates(chance.Even() * 40, chance.Even() * 60, chance.Even() * 10) with
            {
                TaxPercent = Math.Round(chance.Even() * 27, 2),
                Policy = new(1 + chance.Under(100), chance.Under(2) == 0, chance.Under(2) == 0, new Money(chance.Under(20_000)), chance.Under(2) * 50),
            };
            PlannedItem[] items = [.. Enumerable.Range(1, 1 + chance.Under(4)).Select(i => Works.Planned(
                Works.Item(Invariant($"X-1-{i}"), 100 + chance.Under(500), 100 + chance.Under(300), 1 + chance.Under(40), finishing: new Finishing(FinishingKind.CutSquare, 1)), chance.Even()))];
            RunRequest request = Works.Request(rates: rates, items: items);
            CostSheet cost = RunPlanner.Plan(request with { Sheets = [request.Sheets[0] with { Offcuts = [new(0, 1500, 1200, 400)] }] }).Value.Cost;
            Assert.Equal(cost.Cost, Money.Sum(cost.Lines.Select(l => l.Amount)));
            Assert.Equal(cost.Price, cost.Cost + cost.Overhead + cost.Margin);
            Assert.Equal(cost.Price, Money.Sum(cost.ItemPrices.Select(p => p.Price)));
            Assert.Equal(rates.Policy!.OffcutCreditPercent > 0, cost.Lines.Any(l => l.Name == "Offcut credit" && l.Amount.Cents < 0));
            Assert.All(cost.Lines, l => Assert.NotEmpty(l.Because));

            Reconciles(QuoteSums.Of([.. cost.ItemPrices.Select(p => p.Price)], rates), cost, rates);
        }
    }

    [Fact]
    public void Set_up_is_shared_so_that_more_pieces_never_cost_more_each()
    {
        decimal before = decimal.MaxValue;
        foreach (int quantity in new[] { 1, 2, 5, 10, 50, 100 })
        {
            CostSheet cost = RunPlanner.Plan(Works.Request(items: Works.Planned(Works.Item(quantity: quantity)))).Value.Cost;
            decimal each = cost.Price.Units / quantity;
            Assert.True(each < before);
            before = each;
        }
    }

    [Fact]
    public void Rounding_goes_to_the_nearest_or_up_and_leaves_what_is_round()
    {
        QuotePolicy nearest = new(5), up = new(50, RoundUp: true);
        Assert.Equal([100, 100, 105, 105], new long[] { 100, 102, 103, 105 }.Select(c => nearest.Rounded(new(c)).Cents));
        Assert.Equal([0, 50, 50, 100], new long[] { 0, 1, 50, 51 }.Select(c => up.Rounded(new(c)).Cents));
        Assert.Equal(QuoteSums.Of([], Works.ShopRates()).Gross, default);
    }

    [Fact]
    public void A_run_corrected_by_the_log_takes_the_learnt_time_keeps_the_factor_and_costs_accordingly()
    {
        RunRequest request = Works.Request();
        Run plain = RunPlanner.Plan(request).Value;
        EstimateModel model = EstimateModel.Learn(Enumerable.Repeat(new EstimateCase(plain.PressId, plain.Mode.ModeId, plain.StockId, 10, 14), 40));
        Run learnt = RunPlanner.Plan(request with { Learnt = model }).Value;
        double factor = model.For(plain.PressId, plain.Mode.ModeId, plain.StockId).Factor;
        Assert.Equal(plain.Time.TotalMinutes * factor, learnt.Time.TotalMinutes, 9);
        Assert.Equal(factor, learnt.Time.LearntFactor);
        Assert.Equal(Money.FromUnits(60m * (decimal)learnt.Time.TotalMinutes / 60m), learnt.Cost.Lines.Single(l => l.Name == "Press time").Amount);
        Assert.Contains(learnt.Time.Figures, f => f.Name == "correction by the log");
        Assert.Null(RunPlanner.Plan(request with { Learnt = EstimateModel.Learn([]) }).Value.Time.LearntFactor);
    }

    private static void Reconciles(QuoteSums sums, CostSheet cost, ShopRates rates)
    {
        QuotePolicy policy = rates.Policy!;
        Assert.All(sums.Lines, l => Assert.Equal(0, l.Cents % policy.RoundToCents));
        for (int i = 0; i < sums.Lines.Count; i++)
            Assert.InRange(sums.Lines[i].Cents - cost.ItemPrices[i].Price.Cents, policy.RoundUp ? 0 : -policy.RoundToCents / 2, policy.RoundToCents - 1);
        Assert.Equal(sums.Net, Money.Sum(sums.Lines) + sums.SmallOrder);
        Assert.True(sums.Net >= policy.SmallestNet!.Value && sums.SmallOrder.Cents >= 0);
        Assert.Equal(sums.Gross, sums.Net + sums.Tax);

        // Half a cent for the sum, or for each line and the small-order charge.
        decimal off = Math.Abs(sums.Tax.Cents - (sums.Net.Cents * (decimal)rates.TaxPercent / 100m));
        Assert.True(off <= 0.5m * (policy.TaxEachLine ? sums.Lines.Count + 1 : 1));
    }
}
