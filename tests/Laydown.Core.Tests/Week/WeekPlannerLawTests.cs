using Laydown.Layout.Search;
using Laydown.Plan.Week;

namespace Laydown.Core.Tests.Week;

public sealed class WeekPlannerLawTests
{
    [Fact]
    public void Every_run_stands_once_in_open_time_and_none_overlap()
    {
        WeekProblem problem = Problem(60);
        WeekPlan plan = WeekPlanner.Solve(problem, new SearchRules(1, 2000), null, null, CancellationToken.None);
        Assert.Equal(problem.Runs.Select(r => r.Id).Order(), plan.Places.Select(p => p.RunId).Order());
        foreach (WeekPress press in problem.Presses)
        {
            WeekPlace[] places = [.. plan.Places.Where(p => p.PressId == press.Id)];
            Assert.All(places.Zip(places.Skip(1)), z => Assert.True(z.First.End <= z.Second.SetUpStart));
            Assert.All(places.Where(p => !p.BeyondCalendar), p => Assert.Contains(press.Open, s => s.Start <= p.SetUpStart && p.End <= s.End));
            Assert.All(places, p => Assert.True(p.Start >= problem.Runs.Single(r => r.Id == p.RunId).Release));
        }
    }

    [Fact]
    public void More_iterations_are_never_worse_and_the_same_seed_gives_the_same_plan()
    {
        WeekProblem problem = Problem(40);
        WeekPlan first = WeekPlanner.Solve(problem, new SearchRules(1, 0), null, null, CancellationToken.None);
        WeekPlan one = WeekPlanner.Solve(problem, new SearchRules(1, 3000), null, null, CancellationToken.None);
        WeekPlan other = WeekPlanner.Solve(problem, new SearchRules(1, 3000), null, null, CancellationToken.None);
        Assert.True(one.Cost < first.Cost);
        Assert.Equal(one.Places.Select(p => (p.RunId, p.PressId, p.Start)), other.Places.Select(p => (p.RunId, p.PressId, p.Start)));
    }

    [Fact]
    public void Frozen_runs_stay_first_and_held_ones_on_their_press()
    {
        WeekProblem problem = Problem(30) with { Frozen = [new("r7", "one", 30)], Holds = [new("r9", "two", 600)], Orders = [["r3", "r4", "r5"]] };
        WeekPlan plan = WeekPlanner.Solve(problem, new SearchRules(1, 2000), null, null, CancellationToken.None);
        Assert.Equal("r7", plan.Order["one"][0]);
        Assert.Contains(plan.Places, p => p is { RunId: "r9", PressId: "two", Start: >= 600 });
        foreach (IReadOnlyList<string> order in plan.Order.Values)
            Assert.Equal(order.Where(r => r is "r3" or "r4" or "r5").Order(StringComparer.Ordinal), order.Where(r => r is "r3" or "r4" or "r5"));
    }

    private static WeekProblem Problem(int count)
    {
        Random random = new(count);
        IReadOnlyList<WeekSpan> open = [.. Enumerable.Range(0, 5).Select(d => new WeekSpan(d * 1440, (d * 1440) + 600))];
        WeekRun Run(int i)
        {
            WeekTraits traits = new("s" + random.Next(4), random.Next(3) == 0, 3, "l" + random.Next(3), random.Next(2) == 0, "m" + random.Next(2), "a");
            int minutes = 10 + random.Next(80), release = random.Next(1500);
            return new("r" + i, new Dictionary<string, int> { ["one"] = minutes, ["two"] = minutes + 10 }, traits, release, release + random.Next(3000), 1 + random.Next(9), []);
        }

        return new([new("one", open, null), new("two", open, null)], [.. Enumerable.Range(0, count).Select(Run)], new(), [], [], [], []);
    }
}
