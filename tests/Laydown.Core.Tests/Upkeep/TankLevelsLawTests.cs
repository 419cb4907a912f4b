using Laydown.Measures;
using Laydown.Plan.Upkeep;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Xunit;

namespace Laydown.Core.Tests.Upkeep;

public sealed class TankLevelsLawTests
{
    // Levels are sums and differences of some hundred doubles under 10⁵.
    private const double Slack = 1e-5;

    [Fact]
    public void A_tank_that_may_be_topped_up_while_printing_is_when_the_level_reaches_the_low_mark()
    {
        // 1500 ml, low at 200: 1300 ml at 325 ml/h are gone after 4 h; 650 ml are still to come, so one bottle is poured.
        TankPlan cyan = Plan(true, Cares.Use("R-1", Cares.At(1, 8), 6, 1950));
        TopUp poured = Assert.Single(cyan.TopUps);
        Assert.Equal((Cares.At(1, 12), 1000.0, true, "R-1"), (poured.At, poured.Ml, poured.WhilePrinting, poured.RunId));
        Assert.Equal(1500 - 1950 + 1000, cyan.Levels[^1].LevelMl, Slack);
        Assert.Empty(cyan.Shortages);
    }

    [Fact]
    public void A_tank_that_may_not_is_topped_up_before_the_run_that_would_bring_it_low()
    {
        TankPlan cyan = Plan(false, Cares.Use("R-1", Cares.At(1, 8), 1, 700), Cares.Use("R-2", Cares.At(1, 10), 6, 900));
        TopUp poured = Assert.Single(cyan.TopUps);
        Assert.Equal((Cares.At(1, 10), 1000.0, false, "R-2"), (poured.At, poured.Ml, poured.WhilePrinting, poured.RunId));
        Assert.Empty(cyan.Shortages);
    }

    [Fact]
    public void A_run_that_a_full_tank_does_not_last_for_is_told_with_the_instant_it_runs_dry()
    {
        // Full at 2000 ml, 2500 ml in 10 h: low (200) after 7.2 h, dry after 8 h, 500 ml short.
        TankPlan cyan = Plan(false, Cares.Use("R-1", Cares.At(1, 8), 10, 2500));
        TankShortage shortage = Assert.Single(cyan.Shortages);

        // Instants are whole ticks of 100 ns.
        Assert.Equal(Cares.At(1, 8).AddHours(7.2), shortage.LowAt, TimeSpan.FromMilliseconds(1));
        Assert.Equal(Cares.At(1, 16), shortage.DryAt!.Value, TimeSpan.FromMilliseconds(1));
        Assert.Equal(500, shortage.MissingMl, Slack);
        Assert.Equal(2000, cyan.Levels.Max(p => p.LevelMl), Slack);
    }

    [Fact]
    public void Ink_of_set_up_is_gone_at_the_start()
    {
        TankPlan cyan = Plan(true, Cares.Use("R-1", Cares.At(1, 8), 2, 100, setUpMl: 40));
        Assert.Contains(new TankPoint(Cares.At(1, 8), 1460), cyan.Levels);
        Assert.Equal(1360, cyan.Levels[^1].LevelMl, Slack);
    }

    [Fact]
    public void Ink_of_care_is_taken_from_the_tanks_of_its_rule()
    {
        PressDescription press = Cares.Press(null, new CareRule("purge", CareKind.Clean, "Purge white", 5, "operator", EveryDays: 1, TankId: "T-White", InkMlPerLine: 10));
        UpkeepPlan plan = UpkeepPlanner.Plan(Cares.Request(press, Cares.At(1, 7), Cares.At(3, 12))).Value;
        Assert.Equal(3, plan.Care.Count);

        // White has two lines in this press.
        Assert.Equal(60, plan.Tanks.Single(t => t.TankId == "T-White").UsedMl, Slack);
        Assert.All(plan.Tanks.Where(t => t.TankId != "T-White"), t => Assert.Equal(0, t.UsedMl));
    }

    [Fact]
    public void Of_a_run_that_goes_on_while_the_tank_is_read_only_the_rest_is_taken()
    {
        TankPlan cyan = UpkeepPlanner.Plan(Cares.Request(Cares.Press(), Cares.At(1, 9), Cares.At(1, 18), Cares.Use("R-1", Cares.At(1, 8), 4, 400, setUpMl: 30))).Value.Tanks[0];
        Assert.Equal(300, cyan.UsedMl, Slack);
    }

    /// <summary>Ink is neither made nor lost, whatever the plan: seeded plans of forty runs on tanks of either kind.</summary>
    [Theory]
    [InlineData(1, true)]
    [InlineData(2, true)]
    [InlineData(3, true)]
    [InlineData(1, false)]
    [InlineData(2, false)]
    [InlineData(3, false)]
    public void What_was_in_and_what_was_poured_is_what_was_used_and_what_is_left(int seed, bool whilePrinting)
    {
        Random chance = new(seed);
        List<PressUse> uses = [];
        DateTimeOffset now = Cares.At(1, 6);
        for (int i = 0; i < 40; i++)
        {
            now = now.AddMinutes(chance.Next(0, 300));
            uses.Add(Cares.Use(Invariant($"R-{i}"), now, 0.1 + (chance.NextDouble() * 9), chance.Next(0, 2600), chance.Next(0, 60)));
            now = uses[^1].End;
        }

        TankPlan cyan = Plan(whilePrinting, [.. uses]);
        double missing = cyan.Shortages.Sum(s => s.MissingMl);
        Assert.Equal(1500 + cyan.TopUps.Sum(t => t.Ml), cyan.UsedMl - missing + cyan.Levels[^1].LevelMl, Slack);
        Assert.Equal(uses.Sum(u => u.Inks.Sum(i => i.PrintedMl + i.SetUpMl)), cyan.UsedMl, Slack);
        Assert.All(cyan.Levels, p => Assert.InRange(p.LevelMl, 0, 2000 + Slack));
        Assert.Equal(cyan.Levels.OrderBy(p => p.At).Select(p => p.At), cyan.Levels.Select(p => p.At));
        if (whilePrinting)
            Assert.All(cyan.Levels, p => Assert.True(p.LevelMl >= 200 - Slack));
        else
            Assert.DoesNotContain(cyan.TopUps, t => uses.Exists(u => u.Start < t.At && t.At < u.End));

        // Low is reached only where it is told.
        if (cyan.Shortages.Count == 0)
            Assert.All(cyan.Levels, p => Assert.True(p.LevelMl >= 200 - Slack));
        Assert.True(whilePrinting || cyan.Shortages.Count > 0);
    }

    [Fact]
    public void The_lot_that_expires_first_is_poured_first_and_none_after_its_last_day()
    {
        InkPack[] packs =
        [
            new("late", InkRole.Cyan, 5000, new(2027, 1, 1)), new("gone", InkRole.Cyan, 900, new(2026, 5, 31)),
            new("soon", InkRole.Cyan, 300, new(2026, 6, 1)), new("black", InkRole.Black, 900, new(2026, 6, 1)),
        ];
        UpkeepRequest request = Cares.Request(Cares.Press(), Cares.At(1, 6), Cares.At(5, 18), Cares.Use("R-1", Cares.At(1, 8), 8, 2300), Cares.Use("R-2", Cares.At(3, 8), 8, 2300)) with { Packs = packs };
        UpkeepPlan plan = UpkeepPlanner.Plan(request).Value;
        IReadOnlyList<TopUp> topUps = plan.Tanks[0].TopUps;
        Assert.Equal([("soon", 300.0), ("late", topUps[0].Ml - 300)], topUps[0].Lots.Select(l => (l.Lot, l.Ml)));
        Assert.All(topUps.Skip(1), t => Assert.Equal("late", Assert.Single(t.Lots).Lot));
        InkOrder cyan = plan.Inks[0];
        Assert.Equal((5300.0, 900.0, 0.0, 0), (cyan.OnShelfMl, cyan.ExpiredMl, cyan.MissingMl, cyan.Packs));
        Assert.Equal(900, plan.Inks.Single(i => i.Role == InkRole.Black).ExpiredMl);
    }

    [Fact]
    public void What_the_shelf_lacks_is_ordered_in_whole_bottles_in_time()
    {
        UpkeepRequest request = Cares.Request(Cares.Press(), Cares.At(1, 6), Cares.At(12, 18), Cares.Use("R-1", Cares.At(1, 8), 8, 1000), Cares.Use("R-2", Cares.At(10, 8), 8, 2900)) with
        { Packs = [new("one", InkRole.Cyan, 400)] };
        InkOrder cyan = UpkeepPlanner.Plan(request).Value.Inks[0];

        // 3900 ml used of 1500, 200 stay: 2600 are asked for, poured in whole bottles; 400 are there.
        Assert.Equal((3900.0, 3000.0, 400.0, 2600.0, 3), (cyan.UsedMl, cyan.PouredMl, cyan.OnShelfMl, cyan.MissingMl, cyan.Packs));
        Assert.Equal((new DateOnly(2026, 6, 7), new DateOnly(2026, 6, 10)), (cyan.OrderBy, cyan.NeededOn));
    }

    [Fact]
    public void Ink_that_cannot_come_in_time_is_told_as_late()
    {
        UpkeepPlan plan = UpkeepPlanner.Plan(Cares.Request(Cares.Press(), Cares.At(1, 6), Cares.At(12, 18), Cares.Use("R-1", Cares.At(2, 8), 8, 2000))).Value;
        Assert.Equal((new DateOnly(2026, 6, 1), new DateOnly(2026, 6, 2)), (plan.Inks[0].OrderBy, plan.Inks[0].NeededOn));
        Assert.Contains(plan.Warnings, w => w.Contains("which is late: it is poured 2026-06-02", StringComparison.Ordinal));
    }

    private static TankPlan Plan(bool whilePrinting, params PressUse[] uses)
    {
        PressDescription press = Cares.Press();
        press = press with { Tanks = [.. press.Tanks.Select(t => t with { TopUpWhilePrinting = whilePrinting })] };
        Reading<UpkeepPlan> plan = UpkeepPlanner.Plan(Cares.Request(press, Cares.At(1, 6), uses[^1].End.AddHours(10), uses));
        Assert.Empty(plan.Faults);
        return plan.Value.Tanks[0];
    }
}
