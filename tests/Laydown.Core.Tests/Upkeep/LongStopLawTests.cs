using Laydown.Measures;
using Laydown.Plan.Calendar;
using Laydown.Plan.Upkeep;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Xunit;

namespace Laydown.Core.Tests.Upkeep;

public sealed class LongStopLawTests
{
    // The weekends of clocks put forward and back in Berlin, and one of neither. A run ends on Friday, the next begins on Monday.
    [Theory]
    [InlineData(6, 5, 18, 0, 6, 0, null)]
    [InlineData(6, 5, 17, 59, 6, 0, 60 + (1 / 60.0))]
    [InlineData(6, 5, 18, 0, 6, 1, 60 + (1 / 60.0))]
    [InlineData(3, 27, 18, 0, 6, 0, null)]
    [InlineData(3, 27, 17, 0, 6, 0, null)]
    [InlineData(3, 27, 16, 59, 6, 0, 60 + (1 / 60.0))]
    [InlineData(10, 23, 18, 0, 6, 0, 61.0)]
    [InlineData(10, 23, 19, 0, 6, 0, null)]
    [InlineData(10, 23, 18, 59, 6, 0, 60 + (1 / 60.0))]
    public void A_stop_is_long_only_over_the_limit_of_60_hours_that_pass(int month, int friday, int endHour, int endMinute, int startHour, int startMinute, double? hours)
    {
        DateTimeOffset end = Cares.At(friday, endHour, endMinute, month), start = Cares.At(friday + 3, startHour, startMinute, month);
        IReadOnlyList<LongStop> stops = Stops(new(), end, start);
        Assert.Equal(hours is null ? 0 : 1, stops.Count);
        if (hours is not null)
            Assert.Equal((hours.Value, end, start), (stops[0].Hours, stops[0].Start, stops[0].End));
    }

    // Planned to Monday 0:00: somebody can print again only at 6:00.
    [Theory]
    [InlineData(18, 0, null)]
    [InlineData(17, 59, 60 + (1 / 60.0))]
    [InlineData(12, 0, 66.0)]
    public void The_end_of_the_time_planned_is_no_use_of_the_press(int endHour, int endMinute, double? hours)
    {
        DateTimeOffset end = Cares.At(5, endHour, endMinute);
        UpkeepRequest request = Weekend(new(), end, Cares.At(8, 6)) with { To = Cares.At(8, 0) };
        UpkeepPlan plan = UpkeepPlanner.Plan(request with { Uses = [request.Uses[0]] }).Value;
        Assert.Equal(hours is null ? 0 : 1, plan.LongStops.Count);
        if (hours is not null)
            Assert.Equal((hours.Value, Cares.At(8, 6), true), (plan.LongStops[0].Hours, plan.LongStops[0].End, plan.LongStops[0].NothingAfter));
    }

    [Fact]
    public void A_weekend_an_hour_under_the_limit_is_told_as_near()
    {
        UpkeepPlan plan = UpkeepPlanner.Plan(Weekend(new(), Cares.At(5, 18), Cares.At(8, 5))).Value;
        Assert.Empty(plan.LongStops);
        Assert.Contains(plan.Warnings, w => w.Contains("lasts 59 h", StringComparison.Ordinal));
    }

    [Fact]
    public void Storage_fluid_goes_into_every_line_that_stands_and_white_that_circulates_keeps_its_ink()
    {
        LongStop stop = Assert.Single(Stops(new(FluidPerLitre: Money.FromUnits(20.0)), Cares.At(5, 17), Cares.At(8, 8), circulates: true));
        LongStopOption storage = stop.Options.Single(o => o.ShortRuns.Count == 0);
        Assert.Equal(5, storage.Lines.Count(l => l.FluidMl == 120));
        Assert.All(storage.Lines.Where(l => l.Role == InkRole.White), l => Assert.Equal((0.0, 0.0, null), (l.FluidMl, l.BackMinutes, l.LimitHours)));
        Assert.Equal((Cares.At(5, 17), Cares.At(8, 8).AddMinutes(-40), Cares.At(8, 8), 0.0), (storage.FillAt, storage.BackAt, storage.ReadyAt, storage.DelayMinutes));

        // One after the other, 6 min each there and 8 min each back; from 17:00 to 17:30 and from 7:20 to 8:00 somebody is in the shop.
        Assert.Equal(Enumerable.Range(0, 5).Select(i => ((DateTimeOffset?)Cares.At(5, 17, 6 * i), (DateTimeOffset?)Cares.At(8, 7, 20 + (8 * i)))), storage.Lines.Where(l => l.FluidMl > 0).Select(l => (l.FillAt, l.BackAt)));
        Assert.Equal(0, storage.OutsideMinutes);

        // 5 × 120 ml at 20.00/l; 5 × 25 ml at 80.00/l; 5 × 14 min at 30.00/h; 30 + 40 min of it within shifts at 60.00/h.
        Assert.Equal([1200L, 1000L, 3500L, 7000L], storage.Costs.Select(c => c.Amount.Cents));
        Assert.Equal(storage.Costs.Sum(c => c.Amount.Cents), storage.Cost.Cents);
    }

    [Fact]
    public void Where_the_shift_begins_with_the_run_the_run_waits_for_the_lines()
    {
        LongStopOption storage = Assert.Single(Stops(new(), Cares.At(5, 17), Cares.At(8, 6), circulates: true)).Options.Single(o => o.ShortRuns.Count == 0);
        Assert.Equal((Cares.At(8, 6), Cares.At(8, 6, 40), 40.0), (storage.BackAt, storage.ReadyAt, storage.DelayMinutes));

        // A run that ends with the shift leaves the filling to somebody who stays.
        storage = Assert.Single(Stops(new(LimitHours: 50), Cares.At(5, 18), Cares.At(8, 8), circulates: true)).Options.Single(o => o.ShortRuns.Count == 0);
        Assert.Equal(30, storage.OutsideMinutes);
    }

    [Fact]
    public void A_short_run_within_a_shift_that_avoids_the_storage_is_dated_and_costed()
    {
        // The stop begins on Thursday noon: a run in Friday's last half hour leaves 60.0 h to Monday 6:00.
        LongStop stop = Assert.Single(Stops(new(FluidPerLitre: Money.FromUnits(20.0)), Cares.At(4, 12), Cares.At(8, 6), circulates: true));
        LongStopOption runs = stop.Options.Single(o => o.Name == "Short runs");
        ShortRun run = Assert.Single(runs.ShortRuns);
        Assert.Equal((Cares.At(5, 17, 30), Cares.At(5, 18), true), (run.At, run.End, run.InShift));

        // 7 lines × 1.5 ml at 80.00/l, rounded for each line; 30 min at 30.00/h; 30 min at 60.00/h.
        Assert.Equal([84L, 1500L, 3000L], runs.Costs.Select(c => c.Amount.Cents));
        Assert.Same(runs, stop.Options[0]);
        Assert.Equal(stop.Options.Select(o => o.Cost).Order(), stop.Options.Select(o => o.Cost));
    }

    [Fact]
    public void White_that_does_not_circulate_has_a_limit_of_its_own_and_a_way_of_its_own()
    {
        LongStop stop = Assert.Single(Stops(new(), Cares.At(5, 18), Cares.At(8, 6), circulates: false));
        Assert.Equal(24, stop.LimitHours);
        Assert.All(stop.Options.Single(o => o.Name == "Storage fluid").Lines, l => Assert.Equal(l.Role == InkRole.White, l.FluidMl > 0));

        // Over 60 h all lines need something: all stored, all kept alive, or white stored and the others kept alive.
        stop = Assert.Single(Stops(new(), Cares.At(5, 17), Cares.At(8, 6), circulates: false));
        Assert.Equal(["Short runs", "Short runs, other lines stored", "Storage fluid"], stop.Options.Select(o => o.Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_gap_that_short_runs_leave_is_within_the_limit()
    {
        foreach (double limit in new[] { 5.0, 23.5, 48, 60, 71 })
        {
            foreach (int days in new[] { 1, 4, 11, 30 })
            {
                IdleSpan idle = new(Cares.At(1, 11), Cares.At(1, 11).AddDays(days));
                IReadOnlyList<ShortRun> runs = Short(idle, limit, (10, 25));
                DateTimeOffset last = idle.Start;
                foreach (ShortRun run in runs.Append(new(idle.End, idle.End, true)))
                {
                    Assert.InRange((run.At - last).TotalHours, 0, limit);
                    last = run.End;
                }
            }
        }
    }

    /// <summary>Against every choice of half hours: stops of up to eight days, limits from a shift to two days.</summary>
    [Theory]
    [InlineData(2, 30, 10, 25)]
    [InlineData(3, 20, 10, 100)]
    [InlineData(5, 31, 10, 11)]
    [InlineData(8, 44.5, 10, 25)]
    [InlineData(8, 13, 1, 90)]
    public void Short_runs_cost_what_the_best_of_all_choices_on_a_grid_costs(int days, double limit, long inShift, long outside)
    {
        // Friday noon on, so that a weekend is within.
        IdleSpan idle = new(Cares.At(5, 12), Cares.At(5, 12).AddDays(days));
        IReadOnlyList<OpenSpan> open = Cares.Open.Between(idle.Start.AddDays(-1), idle.End.AddDays(1), null);
        int slots = days * 48, reach = (int)(limit * 2);

        // best[i]: least cost when a run ends in slot i; a run takes one slot.
        long[] best = [0, .. Enumerable.Repeat(long.MaxValue / 2, slots)];
        for (int end = 1; end <= slots; end++)
        {
            DateTimeOffset at = idle.Start.AddMinutes(30 * (end - 1));
            long cost = open.Any(s => s.Start <= at && at.AddMinutes(30) <= s.End) ? inShift : outside;
            best[end] = Enumerable.Range(0, end).Where(last => end - 1 - last <= reach).Min(last => best[last]) + cost;
        }

        long least = Enumerable.Range(0, slots + 1).Where(last => slots - last <= reach).Min(last => best[last]);
        Assert.Equal(least, Short(idle, limit, (inShift, outside)).Sum(r => r.InShift ? inShift : outside));
    }

    private static IReadOnlyList<ShortRun> Short(IdleSpan idle, double limit, (long, long) cents) =>
        UpkeepShortRuns(idle, limit, Cares.Open.Between(idle.Start.AddDays(-1), idle.End.AddDays(1), null), cents);

    private static IReadOnlyList<ShortRun> UpkeepShortRuns(IdleSpan idle, double limit, IReadOnlyList<OpenSpan> open, (long, long) cents) =>
        ShortRunTimes.Cheapest(idle, limit, 30, open, cents);

    private static IReadOnlyList<LongStop> Stops(LongStopRules rules, DateTimeOffset end, DateTimeOffset start, bool circulates = true) =>
        UpkeepPlanner.Plan(Weekend(rules, end, start, circulates)).Value.LongStops;

    private static UpkeepRequest Weekend(LongStopRules rules, DateTimeOffset end, DateTimeOffset start, bool circulates = true)
    {
        PressDescription press = Cares.Press(rules);
        press = press with { Tanks = [.. press.Tanks.Select(t => t with { Circulates = circulates && t.Id == "T-White" })] };
        return Cares.Request(press, end.AddHours(-4), start.AddHours(2), Cares.Use("R-1", end.AddHours(-3), 3), Cares.Use("R-2", start, 1));
    }
}
