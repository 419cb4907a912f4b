using Laydown.Layout.Search;
using Laydown.Plan.Week;

namespace Laydown.Core.Tests.Week;

public sealed class SequenceSearchLawTests
{
    /// <summary>Weights up to ten stay within 32 bits, those up to ten million do not: both ways of adding up are seen.</summary>
    [Theory, InlineData(10), InlineData(10_000_000)]
    public void A_move_changes_the_cost_by_what_the_plain_way_says(int mostWeight)
    {
        for (int seed = 1; seed <= 40; seed++)
        {
            SequenceProblem problem = WeekData.Drawn(seed, 5 + seed, mostWeight);
            WeekChance chance = new(seed);
            SequenceMoves moves = new(problem.Count);
            SequenceState state = new(problem, [.. Enumerable.Range(0, problem.Count)]);
            Assert.Equal(mostWeight == 10, problem.IsSmall);
            for (int i = 0; i < 100; i++)
            {
                SequenceMove move = moves.Pick(chance);
                long before = problem.CostOf(state.Order.ToArray()), told = state.Change(move, long.MaxValue);
                state.Apply(move);
                Assert.Equal(problem.CostOf(state.Order.ToArray()), before + told);
                Assert.Equal(before + told, state.Cost);
            }
        }
    }

    [Fact]
    public void No_move_refused_by_the_bound_costs_less_than_what_was_asked()
    {
        int refused = 0;
        for (int seed = 1; seed <= 20; seed++)
        {
            SequenceProblem problem = WeekData.Drawn(seed, 30);
            WeekChance chance = new(seed);
            SequenceMoves moves = new(problem.Count);
            SequenceState state = new(problem, [.. Enumerable.Range(0, problem.Count)]);
            for (int i = 0; i < 300; i++)
            {
                SequenceMove move = moves.Pick(chance);
                long exact = state.Change(move, long.MaxValue), most = (i % 7 * 50) - 100, told = state.Change(move, most);
                Assert.True(told == exact || (told == long.MaxValue && exact > most));
                refused += told == long.MaxValue ? 1 : 0;
                if (i % 10 == 0)
                    state.Apply(move);
            }
        }

        Assert.True(refused > 1000, "Few moves were refused: the bound is not seen.");
    }

    [Fact]
    public void The_end_of_the_last_job_weighs_as_asked()
    {
        SequenceProblem problem = WeekData.Drawn(3, 20);
        WeekChance chance = new(3);
        SequenceMoves moves = new(20);
        SequenceState state = new(problem, [.. Enumerable.Range(0, 20)]);
        for (int i = 0; i < 200; i++)
        {
            SequenceMove move = moves.Pick(chance);
            long change = state.Change(move, long.MaxValue), weighed = state.Change(move, long.MaxValue, 7), end = End(problem, state.Order.ToArray());
            state.Apply(move);
            Assert.Equal(change + (7 * (End(problem, state.Order.ToArray()) - end)), weighed);
        }
    }

    [Theory, InlineData(2), InlineData(3), InlineData(13), InlineData(60)]
    public void Moves_by_chance_stay_within_the_order_and_short_ways_come_most(int count)
    {
        WeekChance chance = new(count);
        SequenceMoves moves = new(count);
        HashSet<SequenceMove> seen = [];
        int next = 0, far = 0;
        for (int i = 0; i < 200_000; i++)
        {
            SequenceMove move = moves.Pick(chance);
            Assert.True(move.First >= 0 && move.First < move.Second && move.Second <= move.Third && move.Third < move.End && move.End <= count);
            (next, far) = (next + (move.End - move.First <= 3 ? 1 : 0), far + (move.End - move.First > count / 2 ? 1 : 0));
            seen.Add(move);
        }

        // No swap is left out.
        for (int one = 0; one < count; one++)
            for (int other = one + 1; other < count; other++)
                Assert.Contains(new SequenceMove(one, one + 1, other, other + 1), seen);
        Assert.True(count < 60 || (next > far && far > 0));
    }

    [Fact]
    public void Six_jobs_come_in_the_order_that_trying_all_finds()
    {
        for (int seed = 1; seed <= 30; seed++)
        {
            SequenceProblem problem = WeekData.Drawn(seed, 6);
            long least = Orders([.. Enumerable.Range(0, 6)], 0).Min(problem.CostOf);
            Assert.Equal(least, SequenceSearch.Solve(problem, new SearchRules(1, 1500), null, CancellationToken.None).Cost);
        }
    }

    [Fact]
    public void Same_seed_and_iterations_give_the_same_order_each_job_once_and_its_true_cost()
    {
        SequenceProblem problem = WeekData.Drawn(5, 40);
        SearchRules rules = new(7, 300, 2);
        SequenceAnswer one = SequenceSearch.Solve(problem, rules, null, CancellationToken.None);
        SequenceAnswer other = SequenceSearch.Solve(problem, rules, null, CancellationToken.None);
        Assert.Equal(one.Order, other.Order);
        Assert.Equal(Enumerable.Range(0, 40), one.Order.Order());
        Assert.Equal(problem.CostOf(one.Order), one.Cost);
    }

    [Fact]
    public void Every_answer_told_is_better_than_the_one_before_and_the_last_is_given()
    {
        List<long> told = [];
        SequenceAnswer answer = SequenceSearch.Solve(WeekData.Drawn(9, 50), new SearchRules(1, 5500), a => told.Add(a.Cost), CancellationToken.None);
        Assert.Equal(told.OrderDescending().Distinct(), told);
        Assert.Equal(answer.Cost, told[^1]);
        Assert.True(told.Count > 1);
    }

    [Fact]
    public void A_stop_asked_for_before_the_start_gives_the_first_answer()
    {
        using CancellationTokenSource stop = new();
        stop.Cancel();
        SequenceProblem problem = WeekData.Drawn(9, 30);
        SequenceAnswer answer = SequenceSearch.Solve(problem, new SearchRules(), null, stop.Token);
        Assert.Equal(SequenceSearch.Solve(problem, new SearchRules(1, 0), null, CancellationToken.None).Order, answer.Order);
    }

    private static long End(SequenceProblem problem, int[] order) =>
        order.Sum(j => (long)problem.Jobs[j].Length) + order.Select((j, at) => (long)problem.SetUps[((at == 0 ? problem.Count : order[at - 1]) * problem.Count) + j]).Sum();

    private static IEnumerable<int[]> Orders(int[] jobs, int from)
    {
        if (from == jobs.Length)
        {
            yield return [.. jobs];
            yield break;
        }

        for (int i = from; i < jobs.Length; i++)
        {
            (jobs[from], jobs[i]) = (jobs[i], jobs[from]);
            foreach (int[] order in Orders(jobs, from + 1))
                yield return order;
            (jobs[from], jobs[i]) = (jobs[i], jobs[from]);
        }
    }
}
