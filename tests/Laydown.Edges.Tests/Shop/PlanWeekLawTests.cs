using Laydown.Measures;
using Laydown.Shop.Run;
using Laydown.Shop.Week;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>The runs of a day on presses and shifts: kept, put by hand, locked, and refused by name.</summary>
public sealed class PlanWeekLawTests : IDisposable
{
    private static readonly CancellationToken None = CancellationToken.None;
    private readonly ShopBench shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task Every_run_that_waits_stands_in_a_shift_and_the_plan_is_the_same_when_asked_again()
    {
        IReadOnlyList<RunRecord> runs = await TwoRunsAsync();
        WeekView week = (await Week().PlanAsync(None)).Value;
        Assert.Equal(runs.Select(r => r.Run.Id).Order(StringComparer.Ordinal), week.Runs.Select(r => r.RunId).Order(StringComparer.Ordinal));
        Laydown.Plan.Calendar.OpenTimes times = new(shop.Catalogue.Calendar!);
        Assert.All(week.Runs, r => Assert.Contains(times.Between(week.From, week.From.AddDays(30), r.PressId), s => s.Start <= r.SetUpStart && r.SetUpStart < s.End));
        Assert.Equal(week.Runs.Select(r => (r.RunId, r.Start)), (await Week().PlanAsync(None)).Value.Runs.Select(r => (r.RunId, r.Start)));
        Assert.Contains("<svg", week.Chart.Draw(1).Svg, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_run_put_at_a_time_begins_then_until_it_is_let_go()
    {
        string id = (await TwoRunsAsync())[0].Run.Id;
        WeekRunView before = (await Week().PlanAsync(None)).Value.Runs.First(r => r.RunId == id);
        var at = DateTime.SpecifyKind(before.Start.Date.AddDays(1).AddHours(13), DateTimeKind.Unspecified);
        WeekRunView put = (await Week().PinAsync(id, at, None)).Value.Runs.First(r => r.RunId == id);
        Assert.True(put.Pinned);
        Assert.Equal(at, put.Start.DateTime);
        Assert.Equal(put.Start, (await Week().PlanAsync(None)).Value.Runs.First(r => r.RunId == id).Start);
        Assert.False((await Week().UnpinAsync(id, None)).Value.Runs.First(r => r.RunId == id).Pinned);
        Assert.Equal("pin", Assert.Single((await Week().UnpinAsync(id, None)).Faults).Field);
    }

    [Fact]
    public async Task Trying_tells_what_putting_then_makes_and_what_is_shown_is_what_was_kept()
    {
        IReadOnlyList<RunRecord> runs = await TwoRunsAsync();
        WeekView planned = (await Week().PlanAsync(None)).Value;
        string id = runs[0].Run.Id;
        DateTime at = planned.Runs.First(r => r.RunId == id).Start.DateTime.AddHours(1);
        WeekTrial trial = (await Week().TryPinAsync(id, at, None)).Value;
        Assert.DoesNotContain((await Week().ShowAsync(None)).Value.Runs, r => r.Pinned);
        WeekView put = (await Week().PinAsync(id, at, None)).Value;
        WeekRunView own = put.Runs.First(r => r.RunId == id);
        Assert.Equal((own.SetUpStart, own.Start, own.End, own.Ready, own.LateMinutes, put.LateRuns), (trial.SetUpStart, trial.Start, trial.End, trial.Ready, trial.LateMinutes, trial.LateRuns));
        Assert.Equal(put.Runs.Select(r => (r.RunId, r.Start)), (await Week().ShowAsync(None)).Value.Runs.Select(r => (r.RunId, r.Start)));
        Assert.Equal(planned.Runs.Select(r => (r.RunId, r.Start, r.Pinned)), (await Week().BackAsync(None)).Value.Runs.Select(r => (r.RunId, r.Start, r.Pinned)));
        Assert.Equal("change", Assert.Single((await Week().BackAsync(None)).Faults).Field);
        Assert.Equal("id", Assert.Single((await Week().TryPinAsync("R-none", at, None)).Faults).Field);
    }

    [Fact]
    public async Task What_cannot_be_is_refused_and_the_week_stays_as_it_was()
    {
        string id = (await TwoRunsAsync())[0].Run.Id;
        WeekView week = (await Week().PlanAsync(None)).Value;
        Assert.Equal("id", Assert.Single((await Week().PinAsync("R-none", DateTime.Today, None)).Faults).Field);
        Assert.Equal("at", Assert.Single((await Week().PinAsync(id, week.From.DateTime.AddDays(-1), None)).Faults).Field);
        Assert.Contains("not worked", Assert.Single((await Week().PinAsync(id, week.From.Date.AddDays(1).AddHours(3), None)).Faults).ToString(), StringComparison.Ordinal);
        Assert.Equal("runs", Assert.Single((await Week().LockAsync([id, id], None)).Faults).Field);
        Assert.Equal(week.Runs.Select(r => (r.RunId, r.Start)), (await Week().PlanAsync(None)).Value.Runs.Select(r => (r.RunId, r.Start)));

        await File.WriteAllTextAsync(Path.Combine(shop.Folder.Root, "store", "week.json"), "{ half");
        Assert.Equal("week.json", Assert.Single((await Week().PlanAsync(None)).Faults).File);
        PlanWeek without = new(shop.Folder, shop.Catalogue with { Calendar = null }, shop.Store, null, shop.Clock);
        Assert.Equal("calendar.json", Assert.Single((await without.PlanAsync(None)).Faults).File);
    }

    /// <summary>Boards over the area that one person lifts, on a day that one works alone but for the hours from 12:00.</summary>
    [Theory, InlineData(true), InlineData(false)]
    public async Task Sheets_for_two_in_hours_of_one_are_told_with_when_two_are_there(bool twoLater)
    {
        IReadOnlyList<RunRecord> runs = await TwoRunsAsync();
        DayOfWeek[] every = Enum.GetValues<DayOfWeek>();
        Laydown.Plan.Calendar.ShopCalendar alone = shop.Catalogue.Calendar! with
        {
            Shifts = [new("one", every, new(6, 0), new(12, 0)), .. twoLater ? [new Laydown.Plan.Calendar.WeekShift("two", every, new(12, 0), new(20, 0), Crew: 2)] : Array.Empty<Laydown.Plan.Calendar.WeekShift>()],
            Holidays = [],
            Extra = [],
            Closed = null,
            Maintenance = null,
        };
        WeekView week = (await new PlanWeek(shop.Folder, shop.Catalogue with { Calendar = alone }, shop.Store, null, shop.Clock).PlanAsync(None)).Value;
        foreach (WeekRunView run in week.Runs)
        {
            Laydown.Press.Stocks.Stock stock = shop.Catalogue.Stocks.First(s => s.Id == runs.First(r => r.Run.Id == run.RunId).Run.StockId);
            bool forTwo = stock.Kind != Laydown.Press.Stocks.StockKind.Roll && (stock.Size.AreaM2 > 1.2 || stock.WeightGPerM2 * stock.Size.AreaM2 > 10_000), lonely = run.SetUpStart.Hour < 12 || !twoLater;
            Assert.Equal(forTwo && lonely, run.CrewWords is not null);
            if (run.CrewWords is { } words)
                Assert.Contains(twoLater ? "next from" : "no hours of two", words, StringComparison.Ordinal);
        }

        Assert.Contains(week.Runs, r => r.CrewWords is not null);
    }

    /// <summary>Sixty runs of drawn times, planned before they were wanted on other days: what is told of a plan from scratch is what taking it makes, and it can be taken back.</summary>
    [Fact]
    public async Task A_plan_from_scratch_that_is_told_of_can_be_taken_and_taken_back()
    {
        await DrawnAsync(60);
        PlanWeek week = Week(4000);
        WeekView told = (await week.PlanAsync(None)).Value;
        for (int turn = 1; turn < 60 && told.Afresh is null; turn++)
        {
            await WantedAtOtherTimesAsync(turn);
            week = Week(4000 << (turn % 4));
            told = (await week.PlanAsync(None)).Value;
        }

        WeekAfresh afresh = told.Afresh!;
        Assert.InRange(afresh.Percent, 1, 5);
        Assert.Contains("% less", afresh.Words, StringComparison.Ordinal);
        WeekView taken = (await week.AfreshAsync(None)).Value;
        Assert.Equal(told.Runs.Sum(r => r.LateMinutes) - afresh.LateMinutesLess, taken.Runs.Sum(r => r.LateMinutes));
        Assert.Equal((told.LateRuns - afresh.LateRunsLess, told.SetUpMinutes - afresh.SetUpMinutesLess), (taken.LateRuns, taken.SetUpMinutes));
        Dictionary<string, DateTimeOffset> before = told.Runs.ToDictionary(r => r.RunId, r => r.Start, StringComparer.Ordinal);
        Assert.Equal(afresh.Moves, taken.Runs.Count(r => r.Start != before[r.RunId]));
        Assert.Equal(told.Runs.Select(r => (r.RunId, r.Start)), (await week.BackAsync(None)).Value.Runs.Select(r => (r.RunId, r.Start)));
    }

    [Fact]
    public async Task A_plan_that_none_from_scratch_betters_stays()
    {
        await TwoRunsAsync();
        WeekView planned = (await Week().PlanAsync(None)).Value;
        Assert.Null(planned.Afresh);
        Assert.Equal("afresh", Assert.Single((await Week().AfreshAsync(None)).Faults).Field);
        Assert.Equal(planned.Runs.Select(r => (r.RunId, r.Start)), (await Week().ShowAsync(None)).Value.Runs.Select(r => (r.RunId, r.Start)));
    }

    [Fact]
    public async Task A_locked_order_is_kept_until_it_is_unlocked()
    {
        string[] ids = [.. (await TwoRunsAsync()).GroupBy(r => r.Run.PressId).OrderByDescending(g => g.Count()).First().Select(r => r.Run.Id)];
        Assert.Equal(2, ids.Length);
        foreach (string[] order in new[] { ids, [ids[1], ids[0]] })
        {
            // A week nobody planned yet, so that nothing begins soon.
            Directory.CreateDirectory(Path.Combine(shop.Folder.Root, "store"));
            File.Delete(Path.Combine(shop.Folder.Root, "store", "week.json"));
            WeekView locked = (await Week().LockAsync(order, None)).Value;
            Assert.Equal(order, locked.Runs.Select(r => r.RunId));
            Assert.Equal(order, Assert.Single(locked.Orders));
            Assert.Empty((await Week().UnlockAsync(order[0], None)).Value.Orders);
        }
    }

    private async Task WantedAtOtherTimesAsync(int turn)
    {
        IReadOnlyList<RunRecord> runs = await shop.Store.RunsAsync(None);
        await shop.Store.SaveRunsAsync([.. runs.Select((r, i) => r with { Run = r.Run with { Due = runs[(i + turn) % runs.Count].Run.Due } })], Laydown.Shop.Orders.ItemState.Planned, None);
    }

    // Runs like one that was really planned, of several stocks.
    private async Task DrawnAsync(int count)
    {
        Random chance = new(count);
        RunRecord like = (await TwoRunsAsync())[0];
        Laydown.Shop.Orders.OrderRecord order = (await shop.Store.OrdersAsync(None))[0];
        for (int i = 3; i <= count; i++)
        {
            string id = Invariant($"R-{i}"), item = Invariant($"TW-{i}-1"), of = Invariant($"TW-{i}");
            await shop.Store.SaveOrderAsync(order with { Order = order.Order with { Id = of }, Items = [order.Items[0] with { OrderId = of, Item = order.Items[0].Item with { Id = item }, RunId = id }] }, None);
            Laydown.Plan.Runs.Run run = like.Run with
            {
                Id = id,
                StockId = "stock " + chance.Next(6),
                Time = like.Run.Time with { PrintMinutes = 10 + chance.Next(150), HandlingMinutes = 5 },
                Due = like.Run.Due.AddDays(chance.Next(9) - 8),
                Items = [like.Run.Items[0] with { ItemId = item }],
            };
            await shop.Store.SaveRunsAsync([like with { Run = run }], Laydown.Shop.Orders.ItemState.Planned, None);
        }
    }

    private PlanWeek Week(long moves = Laydown.Plan.Week.WeekPlanner.UsualIterations) => new(shop.Folder, shop.Catalogue, shop.Store, null, shop.Clock) { Iterations = moves };

    private async Task<IReadOnlyList<RunRecord>> TwoRunsAsync()
    {
        shop.Put("TW-1", Samples.Order("TW-1", ShopBench.Item("TW-1-1")));
        shop.Put("TW-2", Samples.Order("TW-2", ShopBench.Item("TW-2-1", stockId: "foamed-pvc-3")));
        return (await DayLawTests.WorkAsync(shop)).Runs;
    }
}
