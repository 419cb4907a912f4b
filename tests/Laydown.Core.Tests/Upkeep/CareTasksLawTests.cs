using Laydown.Plan.Upkeep;
using Laydown.Press.Machines;
using Xunit;

namespace Laydown.Core.Tests.Upkeep;

public sealed class CareTasksLawTests
{
    [Fact]
    public void A_task_by_hours_of_printing_moves_to_the_border_before_the_run_that_would_pass_it()
    {
        // Two runs of 3 h: after 4 h of printing the second is on; so the task comes before it.
        CareTask task = Assert.Single(Tasks(new("n", CareKind.NozzleCheck, "pattern", 4, "operator", EveryPrintHours: 4), Counter("n"),
            Cares.Use("R-1", Cares.At(1, 8), 3), Cares.Use("R-2", Cares.At(1, 12), 3)));
        Assert.Equal((Cares.At(1, 12), Cares.At(1, 13), null), (task.At, task.Due, task.InterruptsRun));
    }

    [Fact]
    public void A_run_longer_than_the_interval_is_paused()
    {
        IReadOnlyList<CareTask> tasks = Tasks(new("n", CareKind.NozzleCheck, "pattern", 4, "operator", EveryPrintHours: 4), Counter("n"), Cares.Use("R-1", Cares.At(1, 7), 9));
        Assert.Equal([(Cares.At(1, 7), null), (Cares.At(1, 11), "R-1"), (Cares.At(1, 15), "R-1")], tasks.Select(t => (t.At, t.InterruptsRun)));
    }

    [Fact]
    public void A_daily_task_comes_once_a_working_day_and_leaves_the_weekend_out()
    {
        IReadOnlyList<CareTask> tasks = Tasks(new("s", CareKind.StopDevices, "stops", 3, "operator", EveryDays: 1), Counter("s", Cares.At(1, 6)));
        Assert.Equal([2, 3, 4, 5, 8, 9, 10, 11, 12], tasks.Select(t => t.At.Day));
        Assert.All(tasks, t => Assert.Equal((6, 0.0), (t.At.Hour, t.LateHours)));
    }

    [Fact]
    public void A_task_that_is_due_while_the_press_stands_is_told_late_where_nobody_is_there()
    {
        CareRule stir = new("w", CareKind.Agitate, "stir", 6, "operator", EveryHours: 24, WhileIdle: true);
        IReadOnlyList<CareTask> tasks = Tasks(stir, Counter("w", Cares.At(4, 12)));
        Assert.Equal([Cares.At(5, 12), Cares.At(5, 18), Cares.At(8, 6)], tasks.Take(3).Select(t => t.At));
        Assert.Equal([0.0, 0, 36], tasks.Take(3).Select(t => t.LateHours));
        Assert.Equal(Cares.At(6, 18), tasks[2].Due);
    }

    [Fact]
    public void A_task_by_ink_counts_set_up_and_print_of_its_tank_from_what_was_counted()
    {
        CareRule filter = new("f", CareKind.Filter, "filter", 15, "operator", EveryMl: 1000, TankId: "T-Cyan");
        CareTask task = Assert.Single(Tasks(filter, new CareCounter("f", Cares.At(1, 6).AddDays(-90), 0, 700),
            Cares.Use("R-0", Cares.At(1, 7), 1, 5000, tank: "T-Black"), Cares.Use("R-1", Cares.At(1, 10), 4, 400, setUpMl: 100)));

        // 700 + 100 at its start, 200 more after half of the run: it is changed before the run.
        Assert.Equal((Cares.At(1, 12), Cares.At(1, 10)), (task.Due, task.At));
    }

    [Fact]
    public void What_is_not_written_down_is_done_at_once_where_it_is_due_daily()
    {
        Assert.Equal(Cares.At(1, 6), Tasks(new CareRule("s", CareKind.StopDevices, "stops", 3, "operator", EveryDays: 1), null)[0].At);
        Assert.Empty(Tasks(new CareRule("l", CareKind.Lamps, "lamps", 3, "operator", EveryDays: 30), null));
    }

    /// <summary>Between two times no interval of hours of printing is passed, and in a shift or at a run somebody is there: seeded plans.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void No_interval_of_printing_is_ever_passed(int seed)
    {
        Random chance = new(seed);
        List<PressUse> uses = [];
        for (DateTimeOffset now = Cares.At(1, 6); now < Cares.At(12, 12); now = uses[^1].End.AddMinutes(chance.Next(0, 900)))
            uses.Add(Cares.Use(Invariant($"R-{uses.Count}"), now, 0.2 + (chance.NextDouble() * 11)));
        IReadOnlyList<CareTask> tasks = Tasks(new("n", CareKind.NozzleCheck, "pattern", 4, "operator", EveryPrintHours: 4), Counter("n"), [.. uses]);
        Assert.True(tasks.Count > 5);
        DateTimeOffset last = Cares.At(1, 6);
        foreach (CareTask task in tasks)
        {
            // Ticks of 100 ns are rounded at each step.
            Assert.InRange(uses.Sum(u => Overlap(u, last, task.At)), 0, 4 + 1e-6);
            Assert.Equal(task.InterruptsRun is null, !uses.Exists(u => u.Start < task.At && task.At < u.End));
            last = task.At;
        }
    }

    [Fact]
    public void Every_task_of_the_usual_care_names_its_source_and_its_cautions()
    {
        PressDescription press = Cares.Press() with { Care = null };
        UpkeepPlan plan = UpkeepPlanner.Plan(Cares.Request(press, Cares.At(1, 6), Cares.At(30, 18), Cares.Use("R-1", Cares.At(2, 8), 6, 900))).Value;
        Assert.All(plan.Care, t => Assert.Equal("common practice, no source", t.Source));
        Assert.All(plan.Care, t => Assert.EndsWith("rule.", t.Cautions[^1], StringComparison.Ordinal));
        Assert.Contains(plan.Care, t => t.Kind == CareKind.Agitate);
        Assert.All(plan.Care.Where(t => t.Kind == CareKind.Clean), t => Assert.Contains(t.Cautions, c => c.Contains("gloves", StringComparison.Ordinal)));
    }

    private static double Overlap(PressUse use, DateTimeOffset from, DateTimeOffset to) =>
        Math.Max(0, ((use.End < to ? use.End : to) - (use.Start > from ? use.Start : from)).TotalHours);

    private static CareCounter Counter(string rule, DateTimeOffset? last = null) => new(rule, last ?? Cares.At(1, 6));

    private static IReadOnlyList<CareTask> Tasks(CareRule rule, CareCounter? counter, params PressUse[] uses)
    {
        DateTimeOffset from = counter is null || counter.LastDone < Cares.At(1, 6) ? Cares.At(1, 6) : counter.LastDone;
        UpkeepRequest request = Cares.Request(Cares.Press(null, rule), from, Cares.At(12, 18), uses);
        return UpkeepPlanner.Plan(request with { State = request.State with { Counters = counter is null ? [] : [counter] } }).Value.Care;
    }
}
