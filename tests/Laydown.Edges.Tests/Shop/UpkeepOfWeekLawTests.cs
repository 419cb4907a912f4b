using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Plan.Upkeep;
using Laydown.Press.Machines;
using Laydown.Shop.Orders;
using Laydown.Shop.Press;
using Laydown.Shop.Run;
using Laydown.Shop.Week;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>The week and upkeep tell the same: one reckoning of runs, care and top-ups.</summary>
public sealed class UpkeepOfWeekLawTests : IDisposable
{
    private static readonly CancellationToken None = CancellationToken.None;
    private readonly ShopBench shop = new();
    private readonly CareBench care = new();

    public void Dispose() => shop.Dispose();

    /// <summary>Nine drawn runs of up to two days: daily checks, hours of printing, bottles poured before runs and within them.</summary>
    [Theory, InlineData(1), InlineData(2), InlineData(3), InlineData(4)]
    public async Task Care_and_top_ups_stand_at_the_same_minutes_in_the_week_and_in_upkeep(int seed)
    {
        PressDescription press = await DrawnAsync(seed);
        WeekView week = (await Week(press).ShowAsync(None)).Value;
        UpkeepPlan plan = (await Upkeep(press).PlanAsync(press.Id, shop.Clock.GetUtcNow(), 60, None)).Value;
        DateTimeOffset until = week.Runs.Max(r => r.End);
        List<(string What, DateTimeOffset At, double Minutes, string? RunId)> told = [.. plan.Care.Where(c => c.At < until).Select(c => (c.Name, c.At, c.Minutes, c.InterruptsRun))];
        told.AddRange(plan.Tanks.SelectMany(t => t.TopUps).Where(t => t.At < until).Select(t => ("Top up " + t.TankId, t.At, press.Care!.TopUpMinutes, t.RunPauses ? t.RunId : null)));
        Assert.Equal(
            week.Care.Where(c => c.CareId is not null).Select(c => (c.What, c.Start, (c.End - c.Start).TotalMinutes, c.RunId)).OrderBy(c => c.Start),
            told.OrderBy(c => c.At));

        // Something of each kind was drawn, and what follows the last run is planned on.
        Assert.Contains(plan.Tanks.SelectMany(t => t.TopUps), t => t.RunPauses);
        Assert.Contains(plan.Tanks.SelectMany(t => t.TopUps), t => !t.RunPauses);
        Assert.Contains(plan.Care, c => c.InterruptsRun is not null);
        Assert.Contains(plan.Care, c => c.At >= until);
        Assert.Equal(week.Runs.Select(r => (r.RunId, r.Start, r.End)).OrderBy(r => r.Start), plan.Uses.GroupBy(u => u.RunId).Select(g => (g.Key, g.Min(u => u.Start), g.Max(u => u.End))).OrderBy(r => r.Item2));
        Assert.Empty(plan.Tanks.SelectMany(t => t.Shortages));
    }

    /// <summary>Weekends of over 60 h, and of over 24 h for white that does not circulate: one decision, the same in both, with the same cost of every way.</summary>
    [Theory, InlineData(1, 0), InlineData(2, 0), InlineData(3, 40), InlineData(4, 400)]
    public async Task A_long_stop_is_decided_once_and_stands_in_both(int seed, int fluidPerLitre)
    {
        PressDescription press = await DrawnAsync(seed, fluidPerLitre);

        // Two runs are put after the weekend, and one after the next.
        await Pins(("R-7", 30, 9), ("R-8", 30, 13), ("R-9", 37, 11));
        WeekView week = (await Week(press).ShowAsync(None)).Value;
        UpkeepPlan plan = (await Upkeep(press).PlanAsync(press.Id, shop.Clock.GetUtcNow(), 60, None)).Value;
        DateTimeOffset until = week.Runs.Max(r => r.End);
        LongStop[] stops = [.. plan.LongStops.Where(s => week.Stops.Any(w => w.Start == s.Start))];
        Assert.NotEmpty(week.Stops);
        Assert.Equal(week.Stops.Select(s => (s.Start, s.End)), stops.Select(s => (s.Start, s.End)));
        foreach ((WeekStopView told, LongStop stop) in week.Stops.Zip(stops))
        {
            Assert.Equal(told.Ways.Select(w => (w.Name, w.Cost)), stop.Options.Select(o => (o.Name, o.Cost)));
            Assert.Equal(stop.Options.Min(o => o.Cost), told.Ways[0].Cost);

            // What the cheapest way says stands in the week.
            LongStopOption taken = stop.Options[0];
            WeekCareView[] blocks = [.. week.Care.Where(c => c.CareId is null && c.Start >= stop.Start && c.End <= taken.ReadyAt)];
            Assert.Equal(taken.ShortRuns.Select(r => (r.At, r.End)), blocks.Where(b => b.What.StartsWith("Short run", StringComparison.Ordinal)).Select(b => (b.Start, b.End)));
            Assert.Equal(taken.FillAt is { } fill ? [fill] : [], blocks.Where(b => b.What == "Lines filled with storage fluid").Select(b => b.Start));
            Assert.Equal(taken.BackAt is { } back ? [back] : [], blocks.Where(b => b.What == "Lines filled with ink again").Select(b => b.Start));
        }

        // Beyond the week's last run, and where a run is paused over a stop, upkeep tells of stops on its own.
        Assert.All(plan.LongStops.Except(stops), s => Assert.True(s.Start >= until || plan.Uses.Any(u => u.End == s.Start && plan.Uses.Any(o => o.RunId == u.RunId && o.Start == s.End))));
    }

    [Fact]
    public async Task Where_nobody_keeps_the_care_of_a_press_the_week_leaves_no_room_and_upkeep_plans_about_its_runs()
    {
        PressDescription press = await DrawnAsync(1) with { Care = null };
        WeekView week = (await Week(press).ShowAsync(None)).Value;
        UpkeepPlan plan = (await Upkeep(press).PlanAsync(press.Id, shop.Clock.GetUtcNow(), 60, None)).Value;
        Assert.Empty(week.Care);
        Assert.NotEmpty(plan.Care);
        Assert.Equal(week.Runs.Select(r => (r.RunId, r.Start)).OrderBy(r => r.Start), plan.Uses.GroupBy(u => u.RunId).Select(g => (g.Key, g.Min(u => u.Start))).OrderBy(r => r.Item2));
    }

    [Fact]
    public async Task A_week_that_cannot_be_read_is_named_by_upkeep_too()
    {
        PressDescription press = await DrawnAsync(1);
        Directory.CreateDirectory(Path.Combine(shop.Folder.Root, "store"));
        await File.WriteAllTextAsync(Path.Combine(shop.Folder.Root, "store", "week.json"), "{ half");
        Assert.Equal("week.json", Assert.Single((await Upkeep(press).PlanAsync(press.Id, shop.Clock.GetUtcNow(), 14, None)).Faults).File);
    }

    // Days of November, hours: kept as the week keeps runs put by hand, without a search.
    private Task Pins(params (string RunId, int Day, int Hour)[] pins)
    {
        DateTimeOffset first = new(2026, 11, 1, 0, 0, 0, TimeSpan.Zero);
        WeekBook book = WeekBook.Empty with { Pins = [.. pins.Select(p => new WeekPin(p.RunId, first.AddDays(p.Day - 1).AddHours(p.Hour)))] };
        Directory.CreateDirectory(Path.Combine(shop.Folder.Root, "store"));
        return File.WriteAllBytesAsync(Path.Combine(shop.Folder.Root, "store", "week.json"), System.Text.Json.JsonSerializer.SerializeToUtf8Bytes(book, Laydown.Shop.ShopJson.Readable));
    }

    private PlanWeek Week(PressDescription press) => new(shop.Folder, Catalogue(press), shop.Store, null, shop.Clock, null, care, new(care));

    private PlanUpkeep Upkeep(PressDescription press) => new(Catalogue(press), shop.Store, care, Week(press), new(care));

    private Catalogue Catalogue(PressDescription press) => shop.Catalogue with { Presses = [press] };

    // Runs like one that was really planned, with times and inks by chance, on a press of small tanks.
    private async Task<PressDescription> DrawnAsync(int seed, int? stops = null)
    {
        Random chance = new(seed);
        shop.Put("TW-1", Samples.Order("TW-1", ShopBench.Item("TW-1-1")));
        RunRecord like = Assert.Single((await DayLawTests.WorkAsync(shop)).Runs);
        OrderRecord order = Assert.Single(await shop.Store.OrdersAsync(None));
        for (int i = 2; i < 10; i++)
        {
            string item = Invariant($"TW-{i}-1"), id = Invariant($"R-{i}");
            await shop.Store.SaveOrderAsync(order with { Order = order.Order with { Id = Invariant($"TW-{i}") }, Items = [order.Items[0] with { OrderId = Invariant($"TW-{i}"), Item = order.Items[0].Item with { Id = item }, RunId = id }] }, None);
            double minutes = i % 4 == 0 && stops is null ? 1000 + chance.Next(800) : 20 + chance.Next(300);
            RunTime time = like.Run.Time with { PrintMinutes = minutes * 0.8, HandlingMinutes = minutes * 0.2 };
            IReadOnlyList<InkUse> inks = [.. like.Run.Inks.Select(u => u with { PrintedMl = minutes * chance.NextDouble() * 1.2, SetUpMl = chance.Next(20) })];
            Run run = like.Run with { Id = id, Time = time, Inks = inks, Due = like.Run.Due.AddDays(chance.Next(8)), Items = [.. like.Run.Items.Take(1).Select(p => p with { ItemId = item })] };
            await shop.Store.SaveRunsAsync([like with { Run = run }], ItemState.Planned, None);
        }

        PressDescription press = shop.Catalogue.Presses.First(p => p.Id == like.Run.PressId);
        return press with
        {
            Care = PressCare.Usual(press) with { PackMl = 400, LongStop = new(LimitHours: stops is null ? 60 : 30, FluidPerLitre: Money.FromUnits((double)(stops ?? 0))) },
            Tanks = [.. press.Tanks.Select(t => t with { CapacityMl = 1200, LowMl = 150, LevelMl = 300 + chance.Next(900), Circulates = false, TopUpWhilePrinting = false })],
        };
    }
}
