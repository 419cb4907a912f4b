using Laydown.Core.Tests.Press;
using Laydown.Measures;
using Laydown.Plan.Costs;
using Laydown.Plan.Orders;
using Laydown.Plan.Runs;
using Xunit;

namespace Laydown.Core.Tests.Plan;

/// <summary>Job-cost cases with printed inputs.</summary>
public sealed class CostPublishedTests
{
    /// <summary>Overhead of 6000 over 120 direct hours [Hingst].</summary>
    [Fact]
    public void Overhead_of_6000_over_120_hours_is_50_an_hour() =>
        Assert.Equal(50.00m, new OverheadRate("month", OverheadBase.LabourHours, Money.FromUnits(6000m), 120).PerUnit);

    /// <summary>A printing company charges 180 000 of overhead on 150 000 of labour; jobs 11 and 12 [PrintingJobCase].</summary>
    [Theory]
    [InlineData(3620, 4500, 13_520)]
    [InlineData(6830, 7250, 22_780)]
    public void The_printing_jobs_cost_13_520_and_22_780(int material, int labour, int printed)
    {
        ShopRates rates = Works.ShopRates() with { Overheads = [new("shop", OverheadBase.Labour, Money.FromUnits(180_000m), 150_000)] };
        OverheadLine line = Assert.Single(Overheads.On(rates, new(Money.FromUnits((decimal)(material + labour)), Money.FromUnits((decimal)labour), 0, 0)));
        Assert.Equal(1.20m, line.PerUnit);
        Assert.Equal(printed, material + labour + line.Amount.Units);
    }

    /// <summary>The same company: 178 500 applied, 176 000 really spent [PrintingJobCase]. Labour is what 178 500 at 120 % comes from.</summary>
    [Fact]
    public void The_printing_company_over_applies_2500()
    {
        ShopRates rates = Works.ShopRates() with { Overheads = [new("shop", OverheadBase.Labour, Money.FromUnits(180_000m), 150_000)] };
        Money labour = Money.FromUnits(148_750m);
        IReadOnlyList<OverheadLine> lines = Overheads.On(rates, new(labour, labour, 0, 0));
        CostSheet work = new([], labour, lines[0].Amount, default, labour + lines[0].Amount, [], lines);
        OverheadReview review = OverheadReviews.Of([work], [new("shop", Money.FromUnits(176_000m), "the year")], rates, new(2026, 1, 1), new(2026, 12, 31));
        Assert.Equal((178_500m, 176_000m, 2500m), (review.Applied.Units, review.Spent.Units, review.Over.Units));
        Assert.Equal(review.CostOfWork - review.Over, review.CostAdjusted);

        // 4000 less spent than budgeted, 1250 of labour too little at 120 %.
        Assert.Equal((4000m, -1500m), (review.Lines[0].BySpending!.Value.Units, review.Lines[0].ByVolume!.Value.Units));
    }

    /// <summary>Two departments, machine and labour hours [TwoRateCase].</summary>
    [Fact]
    public void The_two_rate_job_costs_7419_and_337_23_each()
    {
        ShopRates rates = Works.ShopRates() with
        {
            Overheads =
            [
                new("moulding", OverheadBase.PressHours, Money.FromUnits(218_400m), 84_000, Money.FromUnits(2.80m)),
                new("painting", OverheadBase.LabourHours, Money.FromUnits(531_050m), 55_900, Money.FromUnits(4.80m)),
            ],
        };
        IReadOnlyList<OverheadLine> lines = Overheads.On(rates, new(default, default, 320, 130));
        Assert.Equal([5.40m, 14.30m], lines.Select(l => l.PerUnit));
        decimal applied = lines.Sum(l => l.Amount.Units);
        Assert.Equal(3587m, applied);
        Assert.Equal(7419m, 942 + 1180 + 750 + 960 + applied);
        Assert.Equal(337.23m, Money.FromUnits(7419m / 22).Units);
    }

    [Fact]
    public void A_machine_of_250_000_over_5_years_of_2000_hours_is_20_an_hour() => Assert.Equal(20m, Rates.StraightLinePerHour(250_000, 50_000, 5, 2000));

    /// <summary>A decal of 12 × 120 in on a roll of 30 in: 25 ft² consumed, 15 of it waste.</summary>
    [Fact]
    public void A_narrow_piece_is_charged_the_whole_width_of_the_roll()
    {
        (double consumed, double waste) = Rates.RollConsumed(30 * 25.4, 12 * 25.4, 120 * 25.4);
        Assert.Equal(25, consumed / 0.09290304, 9);
        Assert.Equal(15, waste / 0.09290304, 9);
    }
}

public sealed class CostLawTests
{
    [Fact]
    public void Parts_of_any_amount_add_up_to_it_and_keep_the_order_of_the_weights()
    {
        uint state = 20261125;
        for (int round = 0; round < 2000; round++)
        {
            decimal[] weights = [.. Enumerable.Range(0, 1 + (int)(Next() % 9)).Select(_ => (decimal)(Next() % 1000) / 7)];
            Money total = new((long)(Next() % 1_000_000) - 1000);
            IReadOnlyList<Money> parts = Shares.Of(total, weights);
            Assert.Equal(total, Money.Sum(parts));
            decimal sum = weights.Sum();
            if (sum > 0)
                for (int i = 0; i < parts.Count; i++)
                    Assert.InRange(parts[i].Cents - (total.Cents * weights[i] / sum), -1m, 1m);
        }

        uint Next() => state = (state * 1664525) + 1013904223;
    }

    [Fact]
    public void Equal_weights_share_as_equally_as_cents_allow() =>
        Assert.Equal([new Money(34), new Money(33), new Money(33)], Shares.Of(new Money(100), [1, 1, 1]));

    [Fact]
    public void A_negative_weight_is_refused() => Assert.Throws<ArgumentException>(() => Shares.Of(new Money(1), [1, -1]));

    [Theory]
    [InlineData(20, 25, 3)]
    [InlineData(13.7, 28.3, 4.9)]
    [InlineData(0, 0, 0)]
    public void Lines_add_up_to_cost_cost_to_price_and_items_to_price_to_the_cent(double overhead, double margin, double spoil)
    {
        CostSheet cost = Run(Works.ShopRates(overhead, margin, spoil)).Cost;
        Assert.Equal(cost.Cost, Money.Sum(cost.Lines.Select(l => l.Amount)));
        Assert.Equal(cost.Price, cost.Cost + cost.Overhead + cost.Margin);
        Assert.Equal(cost.Price, Money.Sum(cost.ItemPrices.Select(i => i.Price)));
        Assert.Equal(margin / 100 * (double)cost.Price.Units, (double)cost.Margin.Units, tolerance: 0.02);
        Assert.All(cost.Lines, l => Assert.NotEmpty(l.Because));
    }

    [Fact]
    public void A_run_reckoned_by_hand_costs_what_it_should()
    {
        // One board: 20.00 media; ink and times from the run itself, each line rounded once.
        Run run = Run(Works.ShopRates());
        Assert.Equal(Money.FromUnits(20.0 * 4), run.Cost.Lines[0].Amount);
        Assert.Equal(Money.FromUnits(60.0 * run.Time.TotalMinutes / 60), run.Cost.Lines.Single(l => l.Name == "Press time").Amount);
        InkUse cyan = run.Inks[0];
        Assert.Equal(Money.FromUnits(80.0 * (cyan.PrintedMl + cyan.SetUpMl) / 1000), run.Cost.Lines.Single(l => l.Name == "Ink, cyan").Amount);

        // Finishing of the first item: 4 pieces of 2 × (500 + 400) mm: 7.2 m of cut in 4 + 0.5 × 7.2 = 7.6 min at 30/h, and 7.2 × 0.02.
        Assert.Equal(Money.FromUnits((7.6 * 0.5) + 0.144), run.Cost.Lines.Single(l => l.ItemId == "X-1-1").Amount);
    }

    [Fact]
    public void An_item_with_finishing_pays_for_it_alone()
    {
        CostSheet cost = Run(Works.ShopRates(0, 0, 0)).Cost;
        Money finishing = cost.Lines.Single(l => l.ItemId == "X-1-1").Amount;

        // Both items are equal but for finishing, so their prices differ by exactly that; one cent for the odd one.
        Assert.InRange((cost.ItemPrices[0].Price - cost.ItemPrices[1].Price - finishing).Cents, -1, 1);
    }

    [Fact]
    public void Lamination_is_by_the_finished_area_and_comes_before_the_cut_whatever_the_order_names_first()
    {
        ShopRates rates = Works.ShopRates() with { FinishingRates = [.. Works.ShopRates().FinishingRates, new(FinishingKind.Laminate, 8, 2.5, new Money(340))] };
        Run run = RunPlanner.Plan(Works.Request(rates: rates, items: Works.Planned(Works.Item(finishing: [new(FinishingKind.CutSquare, 1), new(FinishingKind.Laminate, 1)])))).Value;

        // 4 pieces of 500 x 400 mm: 0.8 m² in 8 + 2.5 x 0.8 = 10 min; 7.2 m of cut in 4 + 0.5 x 7.2 = 7.6 min.
        Assert.Equal([FinishingKind.Laminate, FinishingKind.CutSquare], run.FinishingSteps.Select(f => f.Kind));
        Assert.Equal([10, 7.6], run.FinishingSteps.Select(f => Math.Round(f.Minutes, 9)));
        Assert.Equal(Money.FromUnits((10m / 60m * rates.LabourPerHour.Units) + (0.8m * 3.40m)), run.Cost.Lines.First(l => l.Name == "Finishing, lamination").Amount);
    }

    [Fact]
    public void Finishing_without_a_rate_is_refused()
    {
        PlannedItem hemmed = Works.Planned(Works.Item(finishing: new Finishing(FinishingKind.Hem, 1)));
        Reading<Run> run = RunPlanner.Plan(Works.Request(items: hemmed));
        Assert.Contains("Hem", Assert.Single(run.Faults).Found, StringComparison.Ordinal);
    }

    private static Run Run(ShopRates rates) => RunPlanner.Plan(Works.Request(rates: rates, items:
        [Works.Planned(Works.Item("X-1-1", finishing: new Finishing(FinishingKind.CutSquare, 1))), Works.Planned(Works.Item("X-1-2"))])).Value;
}
