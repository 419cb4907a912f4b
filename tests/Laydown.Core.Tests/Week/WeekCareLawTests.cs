using Laydown.Layout.Search;
using Laydown.Plan.Week;

namespace Laydown.Core.Tests.Week;

/// <summary>Care of presses in the week: no run lies in it, it comes in time, and long stops have what they need.</summary>
public sealed class WeekCareLawTests
{
    private static readonly WeekTraits Traits = new("s", false, 3, "l", false, "m", "a");

    [Theory, InlineData(1), InlineData(2), InlineData(3)]
    public void While_a_press_prints_no_care_is_overdue_and_no_run_lies_in_it(int seed)
    {
        WeekProblem problem = Drawn(seed, 40);
        WeekPlan plan = WeekPlanner.Solve(problem, new SearchRules(1, 1000), null, null, CancellationToken.None);
        foreach (WeekPress press in problem.Presses)
        {
            WeekBlock[] blocks = [.. plan.Care.Where(b => b.PressId == press.Id)];
            WeekPlace[] places = [.. plan.Places.Where(p => p.PressId == press.Id)];
            Assert.All(blocks.Zip(blocks.Skip(1)), z => Assert.True(z.First.End <= z.Second.Start));
            foreach (WeekPlace place in places)
            {
                Assert.All(place.Parts, p => Assert.DoesNotContain(blocks, b => b.Start < p.End && p.Start < b.End));
                Assert.Equal(place.SetUpMinutes + problem.Runs.First(r => r.Id == place.RunId).Minutes[press.Id], place.Parts.Sum(p => p.End - p.Start));
            }

            foreach (WeekCare care in press.Care!)
                Assert.True(Overdue(problem, care, places, blocks) <= 1e-9, Invariant($"{care.Id} on {press.Id}"));
        }

        Assert.Contains(plan.Care, b => b.RunId is not null);
        Assert.Contains(plan.Care, b => b.RunId is null);
        Assert.Equal(plan.Cost, WeekPlanner.Lay(problem, plan.Order).Cost);
    }

    [Fact]
    public void Care_stands_before_the_run_in_which_it_would_be_due_and_is_done_where_the_press_opens_again()
    {
        // A check every 24 h, last done 100 min before the week: due at 1340, in the night. Cleaning by hours of printing: 3/4 used, each run uses 1/2.
        WeekPress press = new("one", [new(0, 600), new(1440, 2040)], Traits, Care: [new("check", "Check", 5, 1440, -100), new("clean", "Clean", 12, 0, 0, 0.75)]);
        WeekRun Run(string id, int minutes) => new(id, new Dictionary<string, int> { ["one"] = minutes }, Traits, 0, 5000, 1, [], true, new Dictionary<string, double> { ["clean"] = 0.5 });
        WeekPlan plan = WeekPlanner.Lay(new([press], [Run("a", 400), Run("b", 300)], new(Always: 0), [], [], [], []), new Dictionary<string, IReadOnlyList<string>> { ["one"] = ["a", "b"] });

        // By hand: cleaning would be due after half of a, from 0; cleaned to 12, a from 12 to 412, b from 412 to the night at 600 and on after the check of 5 min at 1440: 300 - 188 = 112 min more. The next cleaning is full at its end.
        Assert.Equal([("Clean", 0, 12, null), ("Check", 1440, 1445, "b")], Told(plan));
        Assert.Equal([("clean", 200, true), ("check", 1340, false)], plan.Care.Select(b => (b.CareId, b.Due, b.ByUse)));
        Assert.Equal([("a", 12, 412), ("b", 412, 1557)], plan.Places.Select(p => (p.RunId, p.Start, p.End)));
        Assert.Equal([new(412, 600), new(1445, 1557)], plan.Places[1].Parts);
    }

    [Fact]
    public void A_run_longer_than_the_interval_pauses_for_care_and_a_press_that_stands_does_it_when_it_is_due()
    {
        WeekPress press = new("one", [new(0, 2000)], Traits, Care: [new("check", "Check", 10, 0, 0), new("daily", "Daily", 5, 1440, -1340)]);
        WeekRun run = new("a", new Dictionary<string, int> { ["one"] = 300 }, Traits, 500, 5000, 1, [], true, new Dictionary<string, double> { ["check"] = 3 });
        WeekPlan plan = WeekPlanner.Lay(new([press], [run], new(Always: 0), [], [], [], []), new Dictionary<string, IReadOnlyList<string>> { ["one"] = ["a"] });

        // By hand: the daily one is due at 100, the press stands till 500. Three intervals in 300 min: after 100 and after 200 of printing the run stands 10 min; the third is full at its end.
        Assert.Equal([("Daily", 100, 105, null), ("Check", 600, 610, "a"), ("Check", 710, 720, "a")], Told(plan));
        Assert.Equal((500, 820), (plan.Places[0].Start, plan.Places[0].End));
    }

    [Fact]
    public void A_run_that_waits_does_not_wait_for_care_that_finds_time_before_it()
    {
        WeekPress press = new("one", [new(0, 600), new(1440, 2040)], Traits, Care: [new("daily", "Daily", 5, 1440, -1140), new("weekly", "Weekly", 20, 10_080, -8400)]);
        WeekRun run = new("a", new Dictionary<string, int> { ["one"] = 100 }, Traits, 1600, 5000, 1, [], true);
        WeekPlan plan = WeekPlanner.Lay(new([press], [run], new(Always: 0), [], [], [], []), new Dictionary<string, IReadOnlyList<string>> { ["one"] = ["a"] });

        // By hand: the daily one is due at 300, while the press stands; the weekly one at 1680, within the run, is done just before it. The run begins when its material is there.
        Assert.Equal([("Daily", 300, 305, null), ("Weekly", 1580, 1600, null)], Told(plan));
        Assert.Equal((1600, 1700), (plan.Places[0].Start, plan.Places[0].End));
    }

    /// <summary>Stirring every 24 h, due at 1340 in the night: in the last minutes before where it matters while the press stands, else when somebody is there again.</summary>
    [Theory, InlineData(true, 594), InlineData(false, 1440)]
    public void What_cannot_wait_for_the_morning_is_done_before_people_go(bool whileIdle, int at)
    {
        WeekPress press = new("one", [new(0, 600), new(1440, 2040)], Traits, Care: [new("stir", "Stir", 6, 1440, -100, WhileIdle: whileIdle)]);
        WeekRun run = new("a", new Dictionary<string, int> { ["one"] = 60 }, Traits, 1500, 5000, 1, [], true);
        Assert.Equal([("Stir", at, at + 6, null)], Told(WeekPlanner.Lay(new([press], [run], new(Always: 0), [], [], [], []), new Dictionary<string, IReadOnlyList<string>> { ["one"] = ["a"] })));
    }

    [Fact]
    public void A_top_up_gives_back_whole_bottles_and_ink_of_care_counts()
    {
        // A tank whose usual top-up is two bottles, with room for .2 of that beyond; .4 are used and each run takes .5. A cleaning before the third run takes .25.
        WeekCare[] care = [new("ink", "Top up", 4, 0, 0, 0.4, Whole: 0.5, Room: 1.2), new("clean", "Clean", 10, 0, 0, 0, Adds: new Dictionary<string, double> { ["ink"] = 0.25 })];
        WeekRun Run(string id) => new(id, new Dictionary<string, int> { ["one"] = 100 }, Traits, 0, 5000, 1, [], true, new Dictionary<string, double> { ["ink"] = 0.5, ["clean"] = 0.5 });
        WeekPlan plan = WeekPlanner.Lay(
            new([new("one", [new(0, 2000)], Traits, Care: care)], [Run("a"), Run("b"), Run("c"), Run("d")], new(Always: 0), [], [], [], []), new Dictionary<string, IReadOnlyList<string>> { ["one"] = ["a", "b", "c", "d"] });

        // By hand: after a .9; room for 1.1, two bottles: -.1, after b .4. Cleaned: .65, and .5 more are too much: room for .85, one bottle: .15, after c .65; room for .85: .15, after d .65.
        Assert.Equal([("Top up", 100, 104, null), ("Clean", 204, 214, null), ("Top up", 214, 218, null), ("Top up", 318, 322, null)], Told(plan));
    }

    /// <summary>A weekend of 3600 min exactly needs nothing; one minute more a short run where there is open time for it, else storage fluid.</summary>
    [Theory, InlineData(1440, 0, 0), InlineData(1439, 1, 0), InlineData(1401, 0, 88)]
    public void A_stop_over_the_limit_needs_a_short_run_or_storage_fluid(int lastEnd, int shortRuns, int back)
    {
        WeekStand stand = new([new(3600, 6, 8), .. Enumerable.Repeat(new WeekLine(3600, 6, 8), 10)], 30, 0);
        WeekSpan[] open = [new(0, shortRuns > 0 ? 1500 : lastEnd), new(5040, 6000)];
        WeekRun first = new("a", new Dictionary<string, int> { ["one"] = lastEnd }, Traits, 0, 9000, 1, [], true), second = first with { Id = "b", Release = 5040, Minutes = new Dictionary<string, int> { ["one"] = 60 } };
        WeekPlan plan = WeekPlanner.Lay(new([new("one", open, Traits, Stand: stand)], [first, second], new(Always: 0), [], [], [], []), new Dictionary<string, IReadOnlyList<string>> { ["one"] = ["a", "b"] });
        Assert.Equal(shortRuns, plan.Care.Count(b => b.What.StartsWith("Short run", StringComparison.Ordinal)));
        Assert.Equal(5040 + back, plan.Places[1].Start);
        Assert.Equal(back > 0 ? [(lastEnd, lastEnd + 66), (5040, 5128)] : [], plan.Care.Where(b => b.What.StartsWith("Lines", StringComparison.Ordinal)).Select(b => (b.Start, b.End)));
    }

    /// <summary>
    /// Eleven lines stored: 11 × 300 cents, 154 min of work at 3000 an hour, and the minutes within open time of the press at 6000. A short run: 84 cents of ink, 30 min of both. With dear storage the short run of the first
    /// day is taken; where storage is cheap the lines are stored though a short run would do. By hand: 3300 + 7700 + 15400 against 84 + 1500 + 3000; with work and press at nothing 0 against 84.
    /// </summary>
    [Theory, InlineData(300, 3000, 6000, "Short runs", 4584, "Storage fluid", 26400), InlineData(0, 0, 0, "Storage fluid", 0, "Short runs", 84)]
    public void The_cheaper_way_through_a_long_stop_is_taken_and_both_are_told(int store, int labour, int pressCents, string taken, int cents, string other, int otherCents)
    {
        WeekStand stand = new([.. Enumerable.Repeat(new WeekLine(3600, 6, 8, store), 11)], 30, 0, 84, labour, pressCents, 60);
        WeekRun first = new("a", new Dictionary<string, int> { ["one"] = 1300 }, Traits, 0, 9000, 1, [], true), second = first with { Id = "b", Release = 5040, Minutes = new Dictionary<string, int> { ["one"] = 60 } };
        WeekPlan plan = WeekPlanner.Lay(
            new([new("one", [new(0, 1440), new(5040, 6000)], Traits, Stand: stand)], [first, second], new(Always: 0), [], [], [], []), new Dictionary<string, IReadOnlyList<string>> { ["one"] = ["a", "b"] });
        WeekStop stop = Assert.Single(plan.Stops);
        Assert.Equal(("one", 1300, 5040), (stop.PressId, stop.Start, stop.End));
        Assert.Equal([(taken, (long)cents), (other, otherCents)], stop.Ways.Select(w => (w.Name, w.Cents)));
        Assert.Equal(taken == "Short runs" ? [(1410, 1440)] : [(1300, 1366), (5040, 5128)], plan.Care.Select(b => (b.Start, b.End)));
        Assert.Equal(taken == "Short runs" ? 5040 : 5128, plan.Places[1].Start);
    }

    [Fact]
    public void Care_that_cannot_be_is_refused_by_name()
    {
        WeekProblem problem = Drawn(1, 3);
        WeekProblem With(WeekPress press) => problem with { Presses = [press, problem.Presses[1]] };
        Assert.Contains("Press one, care check: found an id twice", With(problem.Presses[0] with { Care = [new("check", "", 1, 0, 0), new("check", "", 1, 0, 0)] }).Faults()[0], StringComparison.Ordinal);
        Assert.Contains("Press one, care check", With(problem.Presses[0] with { Care = [new("check", "", 0, 0, 0)] }).Faults()[0], StringComparison.Ordinal);
        Assert.Contains("Press one, care check", With(problem.Presses[0] with { Care = [new("check", "", 1, 0, 5)] }).Faults()[0], StringComparison.Ordinal);
        Assert.Contains("Press one, care check", With(problem.Presses[0] with { Care = [new("check", "", 1, 0, 0, Whole: double.NaN)] }).Faults()[0], StringComparison.Ordinal);
        Assert.Contains("Press one, stand", With(problem.Presses[0] with { Stand = new([new(0, 1, 1)], 30, 0) }).Faults()[0], StringComparison.Ordinal);
        Assert.Contains("Press one, stand", With(problem.Presses[0] with { Stand = new([new(1, 1, 1, -1)], 30, 0) }).Faults()[0], StringComparison.Ordinal);
        Assert.Contains("share of use", (problem with { Runs = [problem.Runs[0] with { Uses = new Dictionary<string, double> { ["clean"] = -1 } }] }).Faults()[0], StringComparison.Ordinal);
    }

    private static IEnumerable<(string What, int Start, int End, string? RunId)> Told(WeekPlan plan) => plan.Care.Select(b => (b.What, b.Start, b.End, b.RunId));

    // How far over its intervals a care is, at worst, in any minute of printing: minutes, or shares of use beyond the minute that is begun.
    private static double Overdue(WeekProblem problem, WeekCare care, WeekPlace[] places, WeekBlock[] blocks)
    {
        double worst = 0, used = care.Used;
        int last = care.Last, next = 0;
        WeekBlock[] own = [.. blocks.Where(b => b.What == care.What)];
        foreach (WeekPlace place in places)
        {
            WeekRun run = problem.Runs.First(r => r.Id == place.RunId);
            double perMinute = run.Uses!.GetValueOrDefault(care.Id) / run.Minutes[place.PressId];
            foreach (int minute in place.Parts.SelectMany(p => Enumerable.Range(p.Start, p.End - p.Start)).Where(m => m >= place.Start))
            {
                for (; next < own.Length && own[next].End <= minute; next++)
                    (last, used) = (own[next].Start, 0);
                worst = Math.Max(worst, Math.Max(care.EveryMinutes > 0 ? minute - last - care.EveryMinutes : 0, used - 1));
                used += perMinute;
            }
        }

        return worst;
    }

    private static WeekProblem Drawn(int seed, int count)
    {
        Random random = new(seed);
        WeekSpan[] days = [.. Enumerable.Range(0, 6).Select(d => new WeekSpan(d * 1440, (d * 1440) + 600))];
        WeekCare[] care = [new("daily", "Daily", 3, 1440, -700), new("check", "Check", 4, 1440, -1000, 0.3), new("clean", "Clean", 12, 7 * 1440, -5000, 0.9), new("ink", "Top up", 4, 0, 0, -0.4)];
        WeekRun Run(int i)
        {
            WeekTraits traits = Traits with { StockId = "s" + random.Next(4), NeedsWhite = random.Next(2) == 0 };
            int minutes = 10 + random.Next(i == 0 ? 800 : 90);
            Dictionary<string, double> uses = new() { ["check"] = minutes / 240.0, ["clean"] = minutes / 960.0, ["ink"] = random.NextDouble() * 0.6 };
            return new("r" + i, new Dictionary<string, int> { ["one"] = minutes, ["two"] = minutes }, traits, random.Next(900), 900 + random.Next(5000), 1 + random.Next(5), [], true, uses);
        }

        return new([new("one", days, null, Care: care), new("two", days, null, Care: care)], [.. Enumerable.Range(0, count).Select(Run)], new(), [], [], [], []);
    }
}
