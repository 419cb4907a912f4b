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
        WeekPlan one = WeekPlanner.Solve(problem, new SearchRules(1, 20_000), null, null, CancellationToken.None);
        WeekPlan other = WeekPlanner.Solve(problem, new SearchRules(1, 20_000), null, null, CancellationToken.None);
        Assert.True(one.Cost < first.Cost);
        Assert.Equal(one.Places.Select(p => (p.RunId, p.PressId, p.Start)), other.Places.Select(p => (p.RunId, p.PressId, p.Start)));
    }

    [Fact]
    public void What_is_told_of_a_run_on_another_press_is_what_the_plan_then_makes()
    {
        WeekProblem problem = Problem(30);
        WeekPlan plan = WeekPlanner.Solve(problem, new SearchRules(1, 2000), null, null, CancellationToken.None);
        WeekPlace late = plan.Places.MaxBy(p => p.Late)!;
        string to = late.PressId == "one" ? "two" : "one";
        WeekRun there = problem.Runs.First(r => r.Id == late.RunId) with { Minutes = new Dictionary<string, int> { [to] = 5 } };
        WeekRemedy told = WeekReasons.Elsewhere(problem, plan, there);

        // The place it names, carried out by hand.
        WeekProblem then = problem with { Runs = [.. problem.Runs.Select(r => r.Id == there.Id ? there : r)] };
        List<string> row = [.. plan.Order[to]];
        string? before = told.What.Contains(" before ", StringComparison.Ordinal) ? told.What.Split(" before ")[1].TrimEnd('.') : null;
        row.Insert(before is null ? row.Count : row.IndexOf(before), there.Id);
        WeekPlan made = WeekPlanner.Lay(then, new Dictionary<string, IReadOnlyList<string>> { [to] = row, [late.PressId] = [.. plan.Order[late.PressId].Where(r => r != there.Id)] });
        Assert.Equal(made.Places.First(p => p.RunId == there.Id).Late, told.LateThen);
        Assert.Equal(made.Places.Where(p => p.RunId != there.Id).Sum(p => p.Late) - plan.Places.Where(p => p.RunId != there.Id).Sum(p => p.Late), told.OthersLater);
        Assert.Throws<ArgumentException>(() => WeekReasons.Elsewhere(problem, plan, problem.Runs[0]));
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

    /// <summary>What a change of a press's order costs, told from where it begins, is what the whole order costs anew; with care of the press, too.</summary>
    [Theory, InlineData(false), InlineData(true)]
    public void A_changed_order_costs_what_all_of_it_reckoned_anew_costs(bool withCare)
    {
        WeekProblem problem = Problem(24);
        if (withCare)
            problem = problem with { Presses = [.. problem.Presses.Select(p => p with { Care = [new("n", "Nozzle check", 7, 300, -100), new("c", "Cleaning", 20, 1500, -900, 0.4)] })] };
        WeekModel model = new(problem);
        int[] all = [.. Enumerable.Range(0, 24)];
        WeekRow row = new(model, 0, all);
        WeekChance chance = new(5);
        for (int i = 0; i < 300; i++)
        {
            SequenceMove move = WeekData.Move(chance, row.Count);
            int[] then = [.. row.Order[move.Third..move.End], .. row.Order[move.Second..move.Third], .. row.Order[move.First..move.Second]];
            WeekPart part = new(0, move.First, i % 7 == 0 ? then[1..] : then, move.End);
            int[] after = row.Changed(part);
            long told = row.With(part.From, part.Then, part.Resume, long.MaxValue), anew = model.Cost(0, after);
            Assert.Equal(anew, told);
            if (i % 3 != 0)
                continue;
            row.Put(part.From, part.Then, part.Resume);
            Assert.Equal((anew, anew), (row.Cost, model.Cost(0, row.Order.ToArray())));
            if (row.Count < 10)
                row.Put(0, all, row.Count);
        }
    }

    [Fact]
    public void A_change_let_go_early_costs_more_than_what_was_asked()
    {
        WeekModel model = new(Problem(24));
        WeekRow row = new(model, 0, [.. Enumerable.Range(0, 24)]);
        WeekChance chance = new(6);
        int early = 0;
        for (int i = 0; i < 300; i++)
        {
            SequenceMove move = WeekData.Move(chance, row.Count);
            int[] then = [.. row.Order[move.Third..move.End], .. row.Order[move.Second..move.Third], .. row.Order[move.First..move.Second]];
            long exact = row.With(move.First, then, move.End, long.MaxValue), told = row.With(move.First, then, move.End, row.Cost);
            Assert.True(told == exact || (told > row.Cost && exact >= told));
            early += told == exact ? 0 : 1;
        }

        Assert.True(early > 5, Invariant($"{early} changes were let go early."));
    }

    /// <summary>
    /// A press open all the time, where set-ups cost time alone: the planner and the search of sequences, which share no code, weigh the same. The bound of 4 % is ours: with
    /// as many moves as here we saw 0 to 2.4 % on nine drawn weeks of 20 to 60 runs.
    /// </summary>
    [Theory, InlineData(20, 1), InlineData(40, 2)]
    public void The_planner_comes_near_the_order_that_the_search_of_sequences_finds(int count, int seed)
    {
        Random random = new(seed);
        ChangeRates rates = new(WhiteCents: 0, StockCents: 0);
        WeekRun[] runs = [.. Problem(count).Runs.Select(r => r with { Release = 0, Due = 100 + random.Next(48 * count), Minutes = new Dictionary<string, int> { ["one"] = r.Minutes["one"] } })];
        WeekProblem problem = new([new("one", [new(0, 1_000_000)], null)], runs, rates, [], [], [], [], SetUpWeight: 0);
        SequenceProblem sequence = new(
            [.. runs.Select(r => new SequenceJob(r.Id, r.Minutes["one"], r.Due, r.Weight))], [.. runs.Select(r => rates.Minutes(null, r.Traits))],
            [.. runs.Select(a => (IReadOnlyList<int>)[.. runs.Select(b => rates.Minutes(a.Traits, b.Traits))])]);
        SequenceAnswer found = SequenceSearch.Solve(sequence, new SearchRules(1, 500), null, CancellationToken.None);
        WeekPlan plan = WeekPlanner.Solve(problem, new SearchRules(1, 100_000), null, null, CancellationToken.None);
        Assert.Equal(found.Cost, WeekPlanner.Lay(problem, new Dictionary<string, IReadOnlyList<string>> { ["one"] = [.. found.Order.Select(j => runs[j].Id)] }).Cost);
        Assert.InRange(plan.Cost, 0.96 * found.Cost, 1.04 * found.Cost);
    }

    [Fact]
    public void What_stands_is_kept_nearly_as_it_is_where_little_is_gained_by_another_plan()
    {
        WeekProblem problem = Problem(40);
        WeekPlan standing = WeekPlanner.Solve(problem, new SearchRules(1, 40_000), null, null, CancellationToken.None);
        WeekPlan then = WeekPlanner.Solve(problem, new SearchRules(2, 40_000), standing, null, CancellationToken.None);
        Assert.True(then.Cost <= standing.Cost);
        if (then.Cost > 0.95 * standing.Cost)
            Assert.True(Pairs(then).Intersect(Pairs(standing)).Count() >= 0.7 * Pairs(standing).Length);
        Assert.Equal(standing.Places.Select(p => (p.RunId, p.Start)), WeekPlanner.Solve(problem, new SearchRules(3, 0), standing, null, CancellationToken.None).Places.Select(p => (p.RunId, p.Start)));

        static (string, string)[] Pairs(WeekPlan plan) => [.. plan.Order.Values.SelectMany(o => o.Zip(o.Skip(1)))];
    }

    /// <summary>Plans that stand and were good for other days: from scratch nothing is better, or it is taken, or told of between 1 and 5 %. All three are seen.</summary>
    [Fact]
    public void A_plan_from_scratch_is_taken_where_it_gains_five_percent_and_told_of_where_it_gains_one()
    {
        WeekProblem problem = Problem(50);
        int taken = 0, told = 0, neither = 0;
        foreach ((int seed, int moves) in Enumerable.Range(1, 12).SelectMany(s => ((int[])[400, 1500, 5000]).Select(n => (s, n))))
        {
            // A plan that was good before every run was wanted at another time.
            WeekProblem before = problem with { Runs = [.. problem.Runs.Select((r, i) => r with { Due = problem.Runs[(i + seed) % problem.Runs.Count].Due })] };
            WeekPlan standing = WeekPlanner.Solve(before, new SearchRules(seed, 2000), null, null, CancellationToken.None);
            WeekPlan plan = WeekPlanner.Solve(problem, new SearchRules(seed + 50, moves), standing, null, CancellationToken.None);
            (taken, told, neither) = plan.MadeAfresh ? (taken + 1, told, neither) : plan.Afresh is not null ? (taken, told + 1, neither) : (taken, told, neither + 1);
            if (plan.Afresh is not { } afresh)
                continue;
            Assert.InRange((double)afresh.Cost / plan.Cost, 0.95, 0.99);
            Assert.Equal(afresh.Cost, WeekPlanner.Lay(problem, afresh.Order).Cost);
            Assert.False(plan.MadeAfresh);
        }

        Assert.True(taken > 0 && told > 0 && neither > 0, Invariant($"{taken} taken, {told} told, {neither} neither"));
        Assert.Null(WeekPlanner.Solve(problem, new SearchRules(1, 6000), null, null, CancellationToken.None).Afresh);
    }

    /// <summary>One press of six runs: the search against all 720 orders.</summary>
    [Theory, InlineData(1), InlineData(2), InlineData(3), InlineData(4)]
    public void Six_runs_are_ordered_as_well_as_by_trying_all(int seed)
    {
        WeekProblem all = Problem(6 + seed);
        WeekProblem problem = all with { Presses = [all.Presses[0]], Runs = [.. all.Runs.Take(6)] };
        long least = Orders([.. problem.Runs.Select(r => r.Id)]).Min(o => WeekPlanner.Lay(problem, new Dictionary<string, IReadOnlyList<string>> { ["one"] = o }).Cost);
        Assert.Equal(least, WeekPlanner.Solve(problem, new SearchRules(seed, 4000), null, null, CancellationToken.None).Cost);
    }

    [Fact]
    public void A_run_that_does_not_fit_before_the_press_shuts_waits_for_the_next_day_or_pauses_where_it_may()
    {
        WeekRun long1 = new("a", new Dictionary<string, int> { ["one"] = 400 }, Traits, 0, 0, 1, []), long2 = long1 with { Id = "b" };
        WeekPlan whole = Two(long1, long2);
        Assert.Equal(1440, whole.Places[1].SetUpStart);
        WeekPlan paused = Two(long1 with { MayPause = true }, long2 with { MayPause = true });
        Assert.Equal(2, paused.Places[1].Parts.Count);
        Assert.Equal(400 + paused.Places[1].SetUpMinutes, paused.Places[1].Parts.Sum(p => p.End - p.Start));
    }

    /// <summary>Put at 1500 (an hour into the second day): set up just before, not the day before; put at the start of a day: set up at the end of the last one.</summary>
    [Theory, InlineData(1500, 1, 1478), InlineData(1440, 1, 578)]
    public void Set_up_waits_with_a_run_that_waits(int at, int pauses, int setUpStart)
    {
        WeekRun run = new("a", new Dictionary<string, int> { ["one"] = 100 }, Traits with { StockId = "other" }, 0, 0, 1, [], pauses == 1);
        WeekProblem problem = new([new("one", Days, Traits)], [run], new(Always: 16), [], [], [new("a", "one", at)], []);
        WeekPlace place = WeekPlanner.Solve(problem, new SearchRules(1, 0), null, null, CancellationToken.None).Places[0];
        Assert.Equal((at, 22, setUpStart), (place.Start, place.SetUpMinutes, place.SetUpStart));
    }

    [Fact]
    public void Why_a_run_is_late_is_told_and_each_remedy_holds_when_it_is_carried_out()
    {
        WeekRun first = new("a", new Dictionary<string, int> { ["one"] = 300, ["two"] = 300 }, Traits, 0, 3000, 1, []);
        WeekRun late = first with { Id = "b", Due = 400 };
        WeekProblem problem = new([new("one", Days, null), new("two", Days, null)], [first, late], new(), [], [], [], []);
        WeekPlan plan = WeekPlanner.Lay(problem, new Dictionary<string, IReadOnlyList<string>> { ["one"] = ["a", "b"] });
        WeekWhy why = Assert.Single(WeekReasons.Of(problem, plan));
        Assert.Equal("b", why.RunId);
        Assert.Contains(why.Because, b => b.StartsWith("It waits for 1 run on one", StringComparison.Ordinal));
        Assert.Contains(why.Remedies, r => r.What == "On one before a." && r.LateThen == 0);
        Assert.Contains(why.Remedies, r => r.What == "On two as the last." && r is { LateThen: 0, OthersLater: 0 });
        WeekPlan carried = WeekPlanner.Lay(problem, new Dictionary<string, IReadOnlyList<string>> { ["one"] = ["b", "a"] });
        Assert.Equal(0, carried.Places.First(p => p.RunId == "b").Late);
    }

    [Fact]
    public void Planning_anew_from_a_plan_never_makes_it_worse_and_takes_new_runs_in()
    {
        WeekProblem problem = Problem(40);
        WeekPlan plan = WeekPlanner.Solve(problem, new SearchRules(1, 3000), null, null, CancellationToken.None);
        Assert.True(WeekPlanner.Solve(problem, new SearchRules(2, 500), plan, null, CancellationToken.None).Cost <= plan.Cost);
        WeekProblem more = problem with { Runs = [.. problem.Runs, problem.Runs[0] with { Id = "new" }] };
        Assert.Contains(WeekPlanner.Solve(more, new SearchRules(2, 0), plan, null, CancellationToken.None).Places, p => p.RunId == "new");
    }

    [Fact]
    public void No_run_goes_across_a_window_but_where_it_may_pause_there_or_is_too_long_for_any_other_place()
    {
        WeekProblem problem = Problem(40);
        WeekWindow[] windows = [.. Enumerable.Range(0, 5).Select(d => new WeekWindow((d * 1440) + 300, (d * 1440) + 340, "greased"))];
        WeekPress Press(WeekPress p, bool mayPause) => p with
        {
            Open = WeekSpan.Without(p.Open, windows.Select(w => new WeekSpan(w.Start, w.End))),
            Windows = [.. windows.Select(w => w with { MayPause = mayPause })],
        };
        WeekProblem With(bool mayPause) => problem with { Presses = [.. problem.Presses.Select(p => Press(p, mayPause))], Runs = [.. problem.Runs.Select(r => r with { MayPause = true })] };
        static bool Across(WeekPlace place, WeekWindow window) => place.SetUpStart < window.Start && window.End < place.End;
        WeekPlan plan = WeekPlanner.Solve(With(false), new SearchRules(1, 2000), null, null, CancellationToken.None);
        Assert.DoesNotContain(plan.Places, p => windows.Any(w => Across(p, w)));
        Assert.Contains(WeekReasons.Of(With(false) with { Runs = [.. With(false).Runs.Select(r => r with { Due = 60 })] }, plan with { Places = [.. plan.Places.Select(p => p with { Late = p.Ready })] })
            .SelectMany(w => w.Remedies), r => r.What.EndsWith("but for its maintenance.", StringComparison.Ordinal));
        Assert.Contains(WeekPlanner.Solve(With(true), new SearchRules(1, 2000), null, null, CancellationToken.None).Places, p => windows.Any(w => Across(p, w)));

        // Between two windows a press is worked 560 min at most: 600 min of printing go across one all the same.
        WeekRun endless = new("a", new Dictionary<string, int> { ["one"] = 600 }, Traits, 0, 0, 1, [], true);
        WeekProblem one = With(false) with { Presses = [With(false).Presses[0]], Runs = [endless], Frozen = [], Holds = [], Orders = [] };
        Assert.Contains(windows, w => Across(WeekPlanner.Solve(one, new SearchRules(1, 0), null, null, CancellationToken.None).Places[0], w));
        Assert.Contains("window 'greased'", Assert.Single((one with { Presses = [one.Presses[0] with { Open = Days }] }).Faults().Take(1)), StringComparison.Ordinal);
    }

    private static readonly IReadOnlyList<WeekSpan> Days = [.. Enumerable.Range(0, 5).Select(d => new WeekSpan(d * 1440, (d * 1440) + 600))];

    private static readonly WeekTraits Traits = new("s", false, 3, "l", false, "m", "a");

    private static WeekPlan Two(WeekRun one, WeekRun other) => WeekPlanner.Lay(
        new([new("one", Days, Traits)], [one, other], new(), [], [], [], []), new Dictionary<string, IReadOnlyList<string>> { ["one"] = [one.Id, other.Id] });

    private static IEnumerable<IReadOnlyList<string>> Orders(IReadOnlyList<string> ids) => ids.Count <= 1
        ? [ids]
        : ids.SelectMany((id, i) => Orders([.. ids.Where((_, j) => j != i)]).Select(o => (IReadOnlyList<string>)[id, .. o]));

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
