using System.Text.RegularExpressions;
using Laydown.Layout.Search;
using Laydown.Plan.Week;

namespace Laydown.Core.Tests.Week;

/// <summary>Runs at benches after the press: against a walk minute by minute that shares nothing with the queue, and against all orders.</summary>
public sealed partial class WeekBenchLawTests
{
    private static readonly WeekTraits Traits = new("s", false, 3, "l", false, "m", "a");

    [Theory, InlineData(1), InlineData(2), InlineData(3), InlineData(4), InlineData(5)]
    public void Every_run_is_ready_when_a_walk_minute_by_minute_says_so(int seed)
    {
        WeekProblem problem = Drawn(seed, 25);
        WeekPlan plan = WeekPlanner.Solve(problem, new SearchRules(1, 300), null, null, CancellationToken.None);
        Dictionary<string, int> ready = ByMinutes(problem, plan);
        Assert.All(plan.Places, p => Assert.Equal(ready[p.RunId], p.Ready));
        Assert.All(plan.Printed, p => Assert.Equal(ready[p.RunId], p.Ready));
        Assert.All(plan.Places, p => Assert.Equal(Math.Max(0, p.Ready - problem.Runs.First(r => r.Id == p.RunId).Due), p.Late));
    }

    [Fact]
    public void No_place_has_two_runs_and_each_step_takes_its_minutes_of_open_time_after_the_one_before()
    {
        WeekProblem problem = Drawn(7, 60);
        WeekPlan plan = WeekPlanner.Solve(problem, new SearchRules(1, 500), null, null, CancellationToken.None);
        foreach (IGrouping<(string, int), WeekVisit> place in plan.Visits.GroupBy(v => (v.BenchId, v.Place)))
            Assert.All(place.Zip(place.Skip(1)), z => Assert.True(z.First.End <= z.Second.Start));
        foreach (WeekRun run in problem.Runs)
        {
            WeekVisit[] visits = [.. plan.Visits.Where(v => v.RunId == run.Id).OrderBy(v => v.Come)];
            Assert.Equal(run.Steps.Where(s => s.BenchId is not null).Select(s => s.Name), visits.Select(v => v.Step));
            Assert.All(visits.Zip(run.Steps.Where(s => s.BenchId is not null)), z => Assert.Equal(z.Second.Minutes, z.First.Parts.Sum(p => p.End - p.Start)));
            Assert.All(visits, v => Assert.True(v.Come <= v.Start && v.Start >= plan.Places.First(p => p.RunId == run.Id).End));
            Assert.All(visits.Zip(visits.Skip(1)), z => Assert.True(z.First.End <= z.Second.Come));
        }
    }

    [Fact]
    public void Benches_that_no_step_needs_change_nothing()
    {
        WeekProblem with = Drawn(3, 30), without = with with
        {
            Benches = null,
            Printed = null,
            Runs = [.. with.Runs.Select(r => r with { Steps = [.. r.Steps.Select(s => s with { BenchId = null })] })],
        };
        WeekPlan one = WeekPlanner.Solve(without, new SearchRules(1, 2000), null, null, CancellationToken.None);
        WeekPlan other = WeekPlanner.Solve(without with { Benches = with.Benches }, new SearchRules(1, 2000), null, null, CancellationToken.None);
        Assert.Equal(one.Places.Select(p => (p.RunId, p.Start, p.Ready)), other.Places.Select(p => (p.RunId, p.Start, p.Ready)));
        Assert.Equal(one.Cost, other.Cost);
        Assert.Empty(other.Visits);
    }

    /// <summary>With as many places as runs nobody waits: the same plan as with steps that have no bench.</summary>
    [Fact]
    public void Room_for_all_is_as_good_as_no_bench()
    {
        WeekProblem drawn = Drawn(4, 30);
        IReadOnlyList<WeekBench> wide = [.. drawn.Benches!.Select(b => b with { Places = [.. Enumerable.Repeat((IReadOnlyList<WeekSpan>)[], 40)] })];
        WeekPlan one = WeekPlanner.Solve(drawn with { Benches = wide, Printed = null, FinishingOpen = [] }, new SearchRules(1, 0), null, null, CancellationToken.None);
        WeekPlan other = WeekPlanner.Solve(
            drawn with { Benches = null, Printed = null, FinishingOpen = [], Runs = [.. drawn.Runs.Select(r => r with { Steps = [.. r.Steps.Select(s => s with { BenchId = null })] })] },
            new SearchRules(1, 0), null, null, CancellationToken.None);
        Assert.Equal(other.Places.Select(p => (p.RunId, p.Ready)), one.Places.Select(p => (p.RunId, p.Ready)));
        Assert.Equal(other.Cost, one.Cost);
    }

    /// <summary>One press of six runs before a full bench: the search against all 720 orders.</summary>
    [Theory, InlineData(1), InlineData(2), InlineData(3)]
    public void Six_runs_before_a_full_bench_are_ordered_as_well_as_by_trying_all(int seed)
    {
        WeekProblem all = Drawn(20 + seed, 6), problem = all with { Presses = [all.Presses[0]] };
        long least = Orders([.. problem.Runs.Select(r => r.Id)]).Min(o => WeekPlanner.Lay(problem, new Dictionary<string, IReadOnlyList<string>> { ["one"] = o }).Cost);
        WeekPlan plan = WeekPlanner.Solve(problem, new SearchRules(seed, 20_000), null, null, CancellationToken.None);
        Assert.Equal(least, plan.Cost);
        Assert.Equal(plan.Cost, WeekPlanner.Lay(problem, plan.Order).Cost);
    }

    [Fact]
    public void A_full_bench_is_named_with_what_is_on_it_and_what_would_save_the_run_holds_when_it_is_carried_out()
    {
        WeekRun first = new("a", new Dictionary<string, int> { ["one"] = 30 }, Traits, 0, 3000, 1, [new("cut square", 300, false, "saw")]);
        WeekRun late = first with { Id = "b", Due = 420, Weight = 0, Steps = [new("cut square", 100, false, "saw")] };
        WeekProblem problem = new([new("one", [new(0, 600)], Traits)], [first, late], new(Always: 0), [], [], [], [], Benches: [new("saw", [[new(0, 600)]], "Saw")]);
        WeekPlan plan = WeekPlanner.Lay(problem, new Dictionary<string, IReadOnlyList<string>> { ["one"] = ["a", "b"] });

        // By hand: a is on the saw from 30 to 330, b comes at 60, waits 270 min, is done at 430: 10 min late.
        Assert.Equal((60, 330, 430), plan.Visits.Where(v => v.RunId == "b").Select(v => (v.Come, v.Start, v.End)).Single());
        WeekWhy why = Assert.Single(WeekReasons.Of(problem, plan));
        Assert.Contains("At Saw (1 place) it waits 4 h 30 min: full with a.", why.Because);
        Assert.Contains(why.Remedies, r => r is { What: "One place more at Saw.", LateThen: 0, OthersLater: 0 });
        Assert.Contains(why.Remedies, r => r is { What: "On one before a.", LateThen: 0 });
        WeekPlan two = WeekPlanner.Lay(problem with { Benches = [problem.Benches![0] with { Places = [problem.Benches[0].Places[0], problem.Benches[0].Places[0]] }] }, plan.Order);
        Assert.Equal(0, two.Places.First(p => p.RunId == "b").Late);
    }

    [Fact]
    public void Of_a_wait_over_night_it_is_told_how_long_the_bench_was_full_and_days_without_work_have_no_name()
    {
        WeekRun first = new("a", new Dictionary<string, int> { ["one"] = 30 }, Traits, 0, 9000, 1, [new("cut", 100, false, "saw")]), late = first with { Id = "b", Due = 1500, Weight = 0 };
        WeekProblem problem = new([new("one", [new(0, 100), new(4320, 4800)], Traits)], [first, late], new(Always: 0), [], [], [], [], Benches: [new("saw", [[new(0, 100), new(4320, 4800)]], "Saw")]);
        WeekPlan plan = WeekPlanner.Lay(problem, new Dictionary<string, IReadOnlyList<string>> { ["one"] = ["a", "b"] });

        // By hand: a is on the saw 70 min before it shuts at 100 and 30 min from 4320 on; b comes at 60 and waits 40 min of the one day and 30 of the next.
        Assert.Contains("At Saw (1 place) it waits 71 h 30 min: 1 h 10 min of that it is full with a, else nobody is there.", Assert.Single(WeekReasons.Of(problem, plan)).Because);
        string svg = Laydown.Plan.Drawings.WeekDrawing.Draw(
            problem.Presses, new Dictionary<string, string>(), plan, [(0, "Fri"), (1440, "Sat"), (2880, "Sun"), (4320, "Mon"), (5760, "Tue")], new HashSet<string>(), 1, problem.Benches).Svg;
        Assert.All(["Fri", "Mon"], d => Assert.Contains(d, svg, StringComparison.Ordinal));
        Assert.All(["Sat", "Sun"], d => Assert.DoesNotContain(d, svg, StringComparison.Ordinal));
    }

    [Theory, InlineData(15, "Sat"), InlineData(500, "Fri")]
    public void The_rest_of_a_day_that_is_nearly_over_leaves_its_room_to_the_name_of_the_next(int left, string first)
    {
        WeekProblem problem = new([new("one", [new(0, left), new(1440, 2040)], Traits)], [new("a", new Dictionary<string, int> { ["one"] = 300 }, Traits, 0, 9000, 1, [])], new(Always: 0), [], [], [], []);
        WeekPlan plan = WeekPlanner.Lay(problem, new Dictionary<string, IReadOnlyList<string>> { ["one"] = ["a"] });
        string svg = Laydown.Plan.Drawings.WeekDrawing.Draw(problem.Presses, new Dictionary<string, string>(), plan, [(0, "Fri"), (1440, "Sat")], new HashSet<string>()).Svg;
        Assert.Equal(first, new[] { "Fri", "Sat" }.First(d => svg.Contains(d, StringComparison.Ordinal)));
    }

    [Fact]
    public void What_is_due_first_is_taken_first_and_a_bench_that_shuts_goes_on_at_the_same_place()
    {
        WeekRun Run(string id, int due, int minutes) => new(id, new Dictionary<string, int> { ["one"] = 10 }, Traits, 0, due, 1, [new("cut", minutes, false, "saw")]);
        WeekProblem problem = new([new("one", [new(0, 600)], Traits)], [Run("a", 9000, 100), Run("b", 8000, 100), Run("c", 7000, 100)], new(Always: 0), [], [], [], [],
            Benches: [new("saw", [[new(0, 150), new(1000, 1600)]])]);
        WeekPlan plan = WeekPlanner.Lay(problem, new Dictionary<string, IReadOnlyList<string>> { ["one"] = ["a", "b", "c"] });

        // By hand: a from 10 to 110; c, due before b, from 110 on, 40 min before the saw shuts and 60 after; then b.
        Assert.Equal([("a", 10, 110), ("c", 110, 1060), ("b", 1060, 1160)], plan.Visits.Select(v => (v.RunId, v.Start, v.End)));
        Assert.Equal([new(110, 150), new(1000, 1060)], plan.Visits.First(v => v.RunId == "c").Parts);
    }

    [Fact]
    public void A_printed_run_takes_its_place_at_the_bench_and_is_told_late()
    {
        WeekRun run = new("a", new Dictionary<string, int> { ["one"] = 10 }, Traits, 0, 5000, 1, [new("cut", 50, false, "saw")]);
        WeekProblem problem = new([new("one", [new(0, 600)], Traits)], [run], new(Always: 0), [], [], [], [],
            Benches: [new("saw", [[new(-200, -100), new(0, 600)]])], Printed: [new("old", -150, 40, [new("cut", 100, false, "saw")])]);
        WeekPlan plan = WeekPlanner.Solve(problem, new SearchRules(1, 0), null, null, CancellationToken.None);

        // By hand: the old one was worked on for 50 min before the week began, and is on the saw to 50.
        Assert.Equal(new WeekReady("old", 50, 10), Assert.Single(plan.Printed));
        Assert.Equal((10, 50, 100), plan.Visits.Where(v => v.RunId == "a").Select(v => (v.Come, v.Start, v.End)).Single());
    }

    /// <summary>Between two windows there are 260 min: room for 250 min after a run like it (4 min of set-up), but not for 250 set up from nothing (21 min).</summary>
    [Fact]
    public void A_run_that_stands_better_among_others_than_alone_is_told_as_late_as_it_is()
    {
        WeekRun first = new("a", new Dictionary<string, int> { ["one"] = 60 }, Traits, 0, 3000, 1, []);
        WeekRun late = first with { Id = "b", Minutes = new Dictionary<string, int> { ["one"] = 250 }, Due = 390 };
        WeekPress press = new("one", [new(0, 100), new(140, 400), new(440, 800)], null, [new(100, 140, "greased"), new(400, 440, "greased")]);
        WeekProblem problem = new([press], [first, late], new(), [], [], [], []);
        WeekPlan plan = WeekPlanner.Lay(problem, new Dictionary<string, IReadOnlyList<string>> { ["one"] = ["a", "b"] });
        Assert.Equal(4, plan.Places.First(p => p.RunId == "b").Late);
        Assert.Equal(711 - 390, WeekPlanner.Lay(problem, new Dictionary<string, IReadOnlyList<string>> { ["one"] = ["b"] }).Places[0].Late);
        Assert.Contains("Even alone it would be 4 min late: it takes longer than is left.", Assert.Single(WeekReasons.Of(problem, plan)).Because);
    }

    [Fact]
    public void Even_alone_no_run_is_told_later_than_it_is()
    {
        foreach (int seed in Enumerable.Range(40, 3))
        {
            WeekProblem problem = Drawn(seed, 30) with { Changes = new() };
            problem = problem with { Runs = [.. problem.Runs.Select(r => r with { Due = r.Due / 8 })] };
            WeekPlan plan = WeekPlanner.Solve(problem, new SearchRules(1, 500), null, null, CancellationToken.None);
            foreach (WeekWhy why in WeekReasons.Of(problem, plan))
                foreach (Match told in why.Because.Select(b => Alone().Match(b)).Where(m => m.Success))
                    Assert.True((told.Groups[1].Success ? 60 * int.Parse(told.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture) : 0) + int.Parse(told.Groups[2].Value, System.Globalization.CultureInfo.InvariantCulture) <= why.Late);
        }
    }

    [Fact]
    public void A_bench_that_is_not_there_or_has_no_place_is_refused_by_name()
    {
        WeekProblem problem = Drawn(1, 3);
        Assert.Contains((problem with { Benches = [] }).Faults(), f => f.Contains("bench saw, which is not in the plan; wanted no bench", StringComparison.Ordinal));
        Assert.Contains((problem with { Benches = [new("saw", []), problem.Benches![1]] }).Faults(), f => f.Contains("Bench saw: found no place", StringComparison.Ordinal));
        Assert.Contains((problem with { Benches = [.. problem.Benches!, problem.Benches![0]] }).Faults(), f => f.Contains("Benches: found an id twice", StringComparison.Ordinal));
        Assert.Contains((problem with { Printed = [new("r1", 0, 0, [])] }).Faults(), f => f.Contains("Printed run r1", StringComparison.Ordinal));
        Assert.Contains((problem with { Benches = [new("saw", [[new(10, 5)]]), problem.Benches![1]] }).Faults(), f => f.Contains("Bench saw: found open spans", StringComparison.Ordinal));
    }

    // Each minute every place that is worked and free takes, of the runs that wait, the one due first.
    private static Dictionary<string, int> ByMinutes(WeekProblem problem, WeekPlan plan)
    {
        List<Job> jobs = [.. problem.Runs.Select((r, i) => new Job(r.Id, r.Steps, r.Due, r.Weight, i, plan.Places.First(p => p.RunId == r.Id).End)),
            .. problem.Printed!.Select((p, i) => new Job(p.RunId, p.Steps, p.Due, p.Weight, problem.Runs.Count + i, p.End))];
        Dictionary<(string, int), Job?> at = problem.Benches!.SelectMany(b => b.Places.Select((_, p) => (b.Id, p))).ToDictionary(k => k, _ => (Job?)null);
        Dictionary<string, int> ready = [];
        for (int now = jobs.Min(j => j.Free); ready.Count < jobs.Count; now++)
        {
            // Steps without end take no time: what is free now may be so for several steps.
            foreach (Job job in jobs.Where(j => !ready.ContainsKey(j.Id)))
                job.Settle(now, problem.FinishingOpen, ready);
            foreach (WeekBench bench in problem.Benches!)
            {
                for (int place = 0; place < bench.Places.Count; place++)
                {
                    if (at[(bench.Id, place)] is null && Worked(bench.Places[place], now) && jobs.Where(j => j.Waits(bench.Id, now, ready)).OrderBy(j => j.Due).ThenByDescending(j => j.Weight).ThenBy(j => j.Index).FirstOrDefault() is { } next)
                        (at[(bench.Id, place)], next.Left) = (next, next.Steps[next.Step].Minutes);
                    if (at[(bench.Id, place)] is { } job && Worked(bench.Places[place], now) && --job.Left == 0)
                        (at[(bench.Id, place)], job.Left, job.Step, job.Free) = (null, -1, job.Step + 1, now + 1);
                }
            }
        }

        return ready;
    }

    private static bool Worked(IReadOnlyList<WeekSpan> open, int now) => open.Count == 0 || now >= open[^1].End || open.Any(s => s.Start <= now && now < s.End);

    private static IEnumerable<IReadOnlyList<string>> Orders(IReadOnlyList<string> ids) => ids.Count <= 1
        ? [ids]
        : ids.SelectMany((id, i) => Orders([.. ids.Where((_, j) => j != i)]).Select(o => (IReadOnlyList<string>)[id, .. o]));

    private static WeekProblem Drawn(int seed, int count)
    {
        Random random = new(seed);
        WeekSpan[] days = [.. Enumerable.Range(0, 5).Select(d => new WeekSpan(d * 1440, (d * 1440) + 600))];
        WeekSpan[] early = [.. Enumerable.Range(-2, 7).Select(d => new WeekSpan((d * 1440) + 30, (d * 1440) + 300))];
        WeekBench[] benches = [new("saw", [[.. early.Concat(days.Select(d => new WeekSpan(d.Start + 330, d.Start + 500))).OrderBy(s => s.Start)]], "Saw"), new("pack", [days, early])];
        WeekStep[] Steps() => [.. new WeekStep[] { new("cut", 10 + random.Next(90), false, "saw"), new("dry", random.Next(60), true), new("pack", 5 + random.Next(60), false, "pack"), new("fold", random.Next(30), false) }
            .Where(_ => random.Next(4) > 0)];
        WeekRun Run(int i)
        {
            WeekTraits traits = Traits with { StockId = "s" + random.Next(4), NeedsWhite = random.Next(2) == 0 };
            int minutes = 10 + random.Next(50);
            return new("r" + i, new Dictionary<string, int> { ["one"] = minutes, ["two"] = minutes + 10 }, traits, random.Next(800), 600 + random.Next(4000), 1 + random.Next(5), Steps());
        }

        return new([new("one", days, null), new("two", days, null)], [.. Enumerable.Range(0, count).Select(Run)], new(), days, [], [], [], Benches: benches,
            Printed: [.. Enumerable.Range(0, 3).Select(i => new WeekPrinted("p" + i, -60 * (i + 1), 500, Steps()))]);
    }

    [GeneratedRegex("Even alone it would be (?:(\\d+) h )?(\\d+) min late")]
    private static partial Regex Alone();

    private sealed class Job(string id, IReadOnlyList<WeekStep> steps, int due, int weight, int index, int free)
    {
        public string Id { get; } = id;

        public IReadOnlyList<WeekStep> Steps { get; } = steps;

        public int Due { get; } = due;

        public int Weight { get; } = weight;

        public int Index { get; } = index;

        public int Free { get; set; } = free;

        public int Step { get; set; }

        public int Left { get; set; } = -1;

        public bool Waits(string bench, int now, Dictionary<string, int> ready) => !ready.ContainsKey(Id) && Left < 0 && Free <= now && Step < Steps.Count && Steps[Step].BenchId == bench;

        // Steps without a bench pass by themselves; open time is counted minute by minute.
        public void Settle(int now, IReadOnlyList<WeekSpan> open, Dictionary<string, int> ready)
        {
            for (; Left < 0 && Free <= now && Step < Steps.Count && Steps[Step].BenchId is null; Step++)
            {
                int minutes = Steps[Step].Minutes;
                if (Steps[Step].Unattended)
                    Free += minutes;
                else
                    for (bool begun = false; minutes > 0 || (!begun && !Worked(open, Free)); Free++)
                        (minutes, begun) = Worked(open, Free) ? (minutes - 1, true) : (minutes, begun);
            }

            if (Left < 0 && Free <= now && Step == Steps.Count)
                ready[Id] = Free;
        }
    }
}
