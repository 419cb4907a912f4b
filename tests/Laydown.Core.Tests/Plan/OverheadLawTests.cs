using Laydown.Measures;
using Laydown.Plan.Costs;
using Laydown.Plan.Orders;
using Laydown.Plan.Runs;
using Xunit;

namespace Laydown.Core.Tests.Plan;

public sealed class OverheadLawTests
{
    private static readonly OverheadRate Rent = new("rent", OverheadBase.PressHours, new Money(6_000_000), 1500);
    private static readonly OverheadRate Office = new("office", OverheadBase.Labour, new Money(4_000_000), 50_000, new Money(5));

    [Fact]
    public void Kinds_of_overhead_on_a_run_are_hours_and_pay_of_that_run_and_add_up_to_its_price()
    {
        ShopRates rates = Works.ShopRates() with { Overheads = [Rent, Office, new("people", OverheadBase.LabourHours, new Money(100_000), 100)] };
        Run run = RunPlanner.Plan(Works.Request(rates: rates, items: Works.Planned(Works.Item(finishing: new Finishing(FinishingKind.CutSquare, 1))))).Value;
        IReadOnlyList<OverheadLine> lines = run.Cost.OverheadLines!;
        Assert.Equal(run.Cost.Overhead, Money.Sum(lines.Select(l => l.Amount)));
        Assert.Equal(run.Cost.Price, run.Cost.Cost + run.Cost.Overhead + run.Cost.Margin);

        // 4 pieces of 2 × (500 + 400) mm: 7.2 m of cut in 4 + 0.5 × 7.2 = 7.6 min, beside the time at the press; 30 an hour.
        decimal press = (decimal)run.Time.TotalMinutes / 60m, people = press + (7.6m / 60m);
        Assert.Equal([Money.FromUnits(press * 40m), Money.FromUnits(Money.FromUnits(people * 30m).Units * 0.85m), Money.FromUnits(people * 10m)], lines.Select(l => l.Amount));
        Assert.All(lines, l => Assert.NotEmpty(l.Because));
    }

    [Fact]
    public void Without_kinds_the_percent_of_cost_is_the_one_line()
    {
        Run run = RunPlanner.Plan(Works.Request(rates: Works.ShopRates(overhead: 22))).Value;
        OverheadLine line = Assert.Single(run.Cost.OverheadLines!);
        Assert.Equal((Overheads.Whole, run.Cost.Overhead, Money.FromUnits(run.Cost.Cost.Units * 0.22m)), (line.Name, line.Amount, line.Amount));
        Assert.Contains("22 % of cost", run.Cost.MarkUpWords, StringComparison.Ordinal);
        Assert.Contains("25 % of the price", run.Cost.MarkUpWords, StringComparison.Ordinal);
    }

    [Fact]
    public void Spending_and_volume_add_up_to_what_is_over_or_under()
    {
        Random chance = new(20261126);
        ShopRates rates = Works.ShopRates() with { Overheads = [Rent, Office] };
        for (int round = 0; round < 200; round++)
        {
            CostSheet[] runs = [.. Enumerable.Range(0, chance.Next(5)).Select(_ => Sheet(rates, chance.Next(1, 900_000), chance.Next(1, 900) / 7m))];
            OverheadSpent[] spent = [.. Enumerable.Range(0, chance.Next(6)).Select(i => new OverheadSpent(i % 2 == 0 ? "rent" : "office", new(chance.Next(1, 900_000)), "x"))];
            OverheadReview review = OverheadReviews.Of(runs, spent, rates, new(2026, 2, 1), new(2026, 2, 28));
            Assert.Equal(Money.Sum(runs.Select(r => r.Overhead)), review.Applied);
            Assert.Equal(Money.Sum(spent.Select(s => s.Amount)), review.Spent);
            Assert.Equal(review.Applied - review.Spent, review.Over);
            Assert.Equal(review.Price - review.CostAdjusted, review.Left);
            Assert.All(review.Lines, l => Assert.Equal(l.Over, l.BySpending!.Value + l.ByVolume!.Value));
            Assert.All(review.Lines.Where(l => l.PerUnitNeeded is not null), l => Assert.Equal(l.Spent, Money.FromUnits(l.PerUnitNeeded!.Value * l.Quantity)));
        }
    }

    [Theory]
    [InlineData(2024)]
    [InlineData(2026)]
    public void The_budget_of_a_year_is_what_the_shop_says_and_its_months_add_up_to_it(int year)
    {
        ShopRates rates = Works.ShopRates() with { Overheads = [Rent] };
        Assert.Equal(Rent.PerYear, Budget(new(year, 1, 1), new(year, 12, 31)));
        long months = Enumerable.Range(1, 12).Sum(m => Budget(new(year, m, 1), new DateOnly(year, m, 1).AddMonths(1).AddDays(-1)).Cents);
        Assert.InRange(months - Rent.PerYear.Cents, -6, 6);
        Assert.Equal(Rent.PerYear.Cents * 2, Budget(new(year, 1, 1), new(year + 1, 12, 31)).Cents);

        Money Budget(DateOnly from, DateOnly to) => Assert.Single(OverheadReviews.Of([], [], rates, from, to).Lines).Budget!.Value;
    }

    [Fact]
    public void Runs_planned_before_kinds_were_kept_and_entries_of_other_names_count_too()
    {
        ShopRates rates = Works.ShopRates() with { Overheads = [Rent] };
        CostSheet old = new([], new Money(10_000), new Money(2_000), new Money(4_000), new Money(16_000), []);
        OverheadReview review = OverheadReviews.Of([old], [new("gone", new Money(500), "x")], rates, new(2026, 1, 1), new(2026, 1, 31));
        Assert.Equal([("rent", 0L, 0L), (Overheads.Whole, 2_000, 0), ("gone", 0, 500)], review.Lines.Select(l => (l.Name, l.Applied.Cents, l.Spent.Cents)));
        Assert.Equal((1500L, 10_500L), (review.Over.Cents, review.CostAdjusted.Cents));
        Assert.Contains("Over-applied by 15.00", review.Words, StringComparison.Ordinal);
        Assert.Contains("Under-applied by 5.00", OverheadReviews.Of([old], [new("rent", new Money(2_500), "x")], rates, new(2026, 1, 1), new(2026, 1, 31)).Words, StringComparison.Ordinal);
        Assert.Contains("cannot be judged yet", OverheadReviews.Of([old], [], rates, new(2026, 1, 1), new(2026, 1, 31)).Words, StringComparison.Ordinal);
    }

    private static CostSheet Sheet(ShopRates rates, int cents, decimal hours)
    {
        Money cost = new(cents), labour = Money.FromUnits(hours * 30m);
        IReadOnlyList<OverheadLine> lines = Overheads.On(rates, new(cost, labour, hours, hours));
        Money overhead = Money.Sum(lines.Select(l => l.Amount)), price = Rates.PriceWithMargin(cost + overhead, 25);
        return new([], cost, overhead, price - cost - overhead, price, [], lines, 25);
    }
}
