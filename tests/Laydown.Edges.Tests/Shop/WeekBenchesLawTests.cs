using Laydown.Plan.Calendar;
using Laydown.Plan.Log;
using Laydown.Plan.Orders;
using Laydown.Press.Machines;
using Laydown.Shop.Log;
using Laydown.Shop.Run;
using Laydown.Shop.Week;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>The shop's benches in its week: runs queue there, printed ones take room, shops and runs without them plan as before.</summary>
public sealed class WeekBenchesLawTests : IDisposable
{
    private static readonly CancellationToken None = CancellationToken.None;
    private static readonly WeekShift Morning = new("morning", [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday], new(7, 0), new(12, 0));
    private readonly ShopBench shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task A_run_goes_over_the_bench_of_its_work_in_the_hours_of_that_and_is_ready_when_it_leaves()
    {
        IReadOnlyList<RunRecord> runs = await TwoRunsAsync();
        Assert.All(runs, r => Assert.Equal([FinishingKind.CutSquare, FinishingKind.Pack], r.Run.FinishingSteps.Select(s => s.Kind)));
        Assert.All(runs, r => Assert.Equal(r.Run.FinishingMinutes, r.Run.FinishingSteps.Sum(s => s.Minutes), 1e-9));
        WeekView week = (await Week([new("saw", "Saw", [FinishingKind.CutSquare], Shifts: [Morning])]).PlanAsync(None)).Value;
        WeekBenchView saw = Assert.Single(week.Benches);
        Assert.Equal(week.Runs.Select(r => r.RunId).Order(StringComparer.Ordinal), saw.Visits.Select(v => v.RunId).Order(StringComparer.Ordinal));
        Assert.All(saw.Visits, v => Assert.InRange(v.Start.TimeOfDay, new(7, 0, 0), new(12, 0, 0)));
        Assert.All(saw.Visits, v => Assert.True(v.End < week.Runs.First(r => r.RunId == v.RunId).Ready));
        Assert.Contains("Saw", week.Chart.Draw(1).Svg, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_shop_without_benches_and_a_run_that_knows_no_kinds_are_planned_as_one_step_of_finishing()
    {
        IReadOnlyList<RunRecord> runs = await TwoRunsAsync();
        WeekView without = (await Week(null).PlanAsync(None)).Value;
        Assert.Empty(without.Benches);
        foreach (RunRecord run in runs)
            await shop.Store.SaveRunsAsync([run with { Run = run.Run with { FinishingSteps = [] } }], Laydown.Shop.Orders.ItemState.Planned, None);
        WeekView old = (await Week([new("saw", "Saw", [FinishingKind.CutSquare], Shifts: [Morning])]).ShowAsync(None)).Value;
        Assert.Equal(without.Runs.Select(r => (r.RunId, r.Start, r.Ready)), old.Runs.Select(r => (r.RunId, r.Start, r.Ready)));
        Assert.Empty(Assert.Single(old.Benches).Visits);
    }

    [Fact]
    public async Task A_run_the_log_says_is_printed_still_takes_its_bench()
    {
        IReadOnlyList<RunRecord> runs = await TwoRunsAsync();
        RunRecord done = runs[0], waits = runs[1];

        // Printed two minutes ago: its cutting is still to come and stands in front of the other's.
        DateTimeOffset ended = shop.Clock.GetUtcNow().AddMinutes(-2);
        RunActual actual = new(done.Run.Id, ended.AddHours(-1), ended, 1, 0, done.Run.PressId, done.Run.Mode.ModeId, done.Run.StockId, done.Run.Due, 60, 60, null, 0, 1, 1);
        WeekView week = (await Week([new("saw", "Saw", [FinishingKind.CutSquare])], new DoneRuns([actual])).PlanAsync(None)).Value;
        Assert.Equal(waits.Run.Id, Assert.Single(week.Runs).RunId);
        WeekPrintedView printed = Assert.Single(week.Printed);
        Assert.Equal((done.Run.Id, ended), (printed.RunId, printed.Printed));
        Assert.Equal([done.Run.Id, waits.Run.Id], Assert.Single(week.Benches).Visits.Select(v => v.RunId));
        int minutes = (int)Math.Ceiling(done.Run.FinishingSteps[0].Minutes - 1e-9);
        Assert.Equal(minutes, (week.Benches[0].Visits[0].End - week.Benches[0].Visits[0].Start).TotalMinutes);

        // A month later it has long left.
        shop.Clock.Advance(TimeSpan.FromDays(30));
        Assert.Empty((await Week([new("saw", "Saw", [FinishingKind.CutSquare])], new DoneRuns([actual])).PlanAsync(None)).Value.Printed);
    }

    [Fact]
    public async Task Care_of_a_press_stands_in_the_week_where_no_run_lies_and_only_where_it_is_kept()
    {
        await TwoRunsAsync();
        Assert.Empty((await Plan(shop.Catalogue with { Presses = [.. shop.Catalogue.Presses.Select(p => p with { Care = null })] }).PlanAsync(None)).Value.Care);

        // Nothing is written down: what is due daily is done at once, before the first run of each press.
        WeekView week = (await Plan(shop.Catalogue with { Presses = [.. shop.Catalogue.Presses.Select(p => p with { Care = PressCare.Usual(p) })] }).ShowAsync(None)).Value;
        Assert.All(week.Runs.Select(r => r.PressId), p => Assert.Contains(week.Care, c => c.PressId == p && c.What == "Try the stop devices and guards"));
        Assert.All(week.Care, c => Assert.DoesNotContain(week.Runs, r => r.PressId == c.PressId && r.RunId != c.RunId && r.SetUpStart < c.End && c.Start < r.End));
        Assert.Equal(3, week.Care.Where(c => c.What == "Try the stop devices and guards").Select(c => (c.End - c.Start).TotalMinutes).Distinct().Single());
        Assert.Contains("care of the press", week.Chart.Draw(1).Svg, StringComparison.Ordinal);

        // Planned again nothing moves.
        WeekView again = (await Plan(shop.Catalogue with { Presses = [.. shop.Catalogue.Presses.Select(p => p with { Care = PressCare.Usual(p) })] }).PlanAsync(None)).Value;
        Assert.Equal(week.Care, again.Care);
        Assert.Equal(week.Runs.Select(r => (r.RunId, r.Start)), again.Runs.Select(r => (r.RunId, r.Start)));
    }

    private PlanWeek Plan(Laydown.Shop.Orders.Catalogue catalogue) => new(shop.Folder, catalogue, shop.Store, null, shop.Clock);

    private PlanWeek Week(IReadOnlyList<WorkBench>? benches, ILogStore? log = null) =>
        new(shop.Folder, shop.Catalogue with { Calendar = shop.Catalogue.Calendar! with { Benches = benches } }, shop.Store, log, shop.Clock);

    private async Task<IReadOnlyList<RunRecord>> TwoRunsAsync()
    {
        Item Packed(string id, string stock) => ShopBench.Item(id, stockId: stock) with { Finishing = [new(FinishingKind.Pack, 1), new(FinishingKind.CutSquare, 1)] };
        shop.Put("TW-1", Samples.Order("TW-1", Packed("TW-1-1", "fluted-5")));
        shop.Put("TW-2", Samples.Order("TW-2", Packed("TW-2-1", "foamed-pvc-3")));
        return (await DayLawTests.WorkAsync(shop)).Runs;
    }
}
