using System.Runtime.Intrinsics;
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
            SequenceState state = new(problem, [.. Enumerable.Range(0, problem.Count)]);
            Assert.Equal(mostWeight == 10, problem.IsSmall);
            for (int i = 0; i < 100; i++)
            {
                SequenceMove move = WeekData.Move(chance, problem.Count);
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
            SequenceState state = new(problem, [.. Enumerable.Range(0, problem.Count)]);
            for (int i = 0; i < 300; i++)
            {
                SequenceMove move = WeekData.Move(chance, problem.Count);
                long exact = state.Change(move, long.MaxValue), most = (i % 7 * 50) - 100, told = state.Change(move, most);
                Assert.True(told == exact || (told == long.MaxValue && exact > most));
                refused += told == long.MaxValue ? 1 : 0;
                if (i % 10 == 0)
                    state.Apply(move);
            }
        }

        Assert.True(refused > 1000, "Few moves were refused: the bound is not seen.");
    }

    /// <summary>Blocks shifted to earlier and later places, blocks of one length put before a place, swaps: each kind of sweep.</summary>
    [Theory]
    [InlineData(0, 9, 9, 13, SequenceRising.First)]
    [InlineData(4, 7, 7, 8, SequenceRising.End)]
    [InlineData(0, 3, 3, 14, SequenceRising.First | SequenceRising.Second | SequenceRising.Third)]
    [InlineData(5, 6, 6, 9, SequenceRising.Second | SequenceRising.Third | SequenceRising.End)]
    [InlineData(0, 1, 15, 16, SequenceRising.First | SequenceRising.Second)]
    [InlineData(3, 4, 5, 6, SequenceRising.Third | SequenceRising.End)]
    [InlineData(22, 25, 25, 26, SequenceRising.End)]
    public void No_bound_of_a_sweep_lies_above_what_the_move_changes_and_most_are_near(int first, int second, int third, int end, object rising)
    {
        const int jobs = 30;
        int told = 0, near = 0;
        for (int seed = 1; seed <= 40; seed++)
        {
            SequenceState state = new(WeekData.Drawn(seed, jobs), [.. Enumerable.Range(0, jobs)]);
            Vector256<int> bounds = state.Bounds(new(first, second, third, end), (SequenceRising)rising);
            for (int lane = 0; lane < SequenceState.Lanes; lane++)
            {
                SequenceMove move = new SequenceMove(first, second, third, end).Further((SequenceRising)rising, lane);
                if (move.End > jobs)
                    break;
                long exact = state.Change(move, long.MaxValue);
                Assert.True(bounds[lane] <= exact, Invariant($"Seed {seed}, {move}: {bounds[lane]} above {exact}."));
                (told, near) = (told + 1, near + (exact - bounds[lane] <= 0.1 * Math.Abs(exact) ? 1 : 0));
            }
        }

        Assert.True(told >= 100 && near > told / 10, Invariant($"{near} of {told} bounds come near."));
    }

    /// <summary>Where few jobs are late every block may go anywhere: no move that the descent knows is left that helps.</summary>
    [Theory, InlineData(10), InlineData(10_000_000)]
    public void After_a_descent_no_swap_and_no_shift_of_a_block_helps(int mostWeight)
    {
        const int jobs = 18, longestBlock = 13;
        int seen = 0;
        for (int seed = 1; seed <= 12; seed++)
        {
            SequenceProblem problem = WeekData.Drawn(seed, jobs, mostWeight);
            SequenceState state = new(problem, [.. Enumerable.Range(0, jobs)]);
            SequenceDescent descent = new(state);
            descent.LookAtAll();
            descent.Run();
            if (state.IsMostlyLate)
                continue;

            seen++;
            foreach (SequenceMove move in Shifts(jobs, longestBlock).Concat(Swaps(jobs)))
            {
                SequenceState after = new(problem, state.Order.ToArray());
                after.Apply(move);
                Assert.True(problem.CostOf(after.Order.ToArray()) >= state.Cost, Invariant($"Seed {seed}: {move} helps."));
            }
        }

        Assert.True(seen > 2);
    }

    [Fact]
    public void A_child_keeps_a_run_of_one_parent_in_its_places_and_the_rest_in_the_order_of_the_other()
    {
        const int jobs = 20;
        int[] one = [.. Enumerable.Range(0, jobs)], other = [.. one.Reverse()];
        for (int seed = 1; seed <= 50; seed++)
        {
            SequenceOrders orders = new(jobs, 2);
            Assert.True(orders.Keep(one, 1) && orders.Keep(other, 2) && orders.IsFull);
            int[] child = orders.Cross(new(seed));
            Assert.Equal(one, child.Order());
            int[][] parents = [one, other];
            Assert.Contains(parents, p => RunsOf(p, child).Any(run => RestOf(parents.First(q => q != p), run).SequenceEqual(RestOf(child, run))));
        }
    }

    [Fact]
    public void Of_orders_much_alike_the_better_is_kept_and_a_full_set_gives_up_its_worst()
    {
        const int jobs = 20;
        int[] one = [.. Enumerable.Range(0, jobs)], near = [1, 0, .. one[2..]], far = [.. one.Reverse()], odd = [.. one.Where(j => j % 2 == 1), .. one.Where(j => j % 2 == 0)];
        SequenceOrders orders = new(jobs, 2);
        Assert.True(orders.Keep(one, 50));
        Assert.False(orders.Keep(near, 60));
        Assert.False(orders.Keep(far, 50));
        Assert.True(orders.Keep(near, 40));
        Assert.False(orders.IsFull);
        Assert.True(orders.Keep(far, 90));
        Assert.False(orders.Keep(odd, 95));
        Assert.True(orders.Keep(odd, 80));
        Assert.True(orders.Keep(one, 30));
    }

    [Fact]
    public void Six_jobs_come_in_the_order_that_trying_all_finds()
    {
        for (int seed = 1; seed <= 30; seed++)
        {
            SequenceProblem problem = WeekData.Drawn(seed, 6);
            long least = Orders([.. Enumerable.Range(0, 6)], 0).Min(problem.CostOf);
            Assert.Equal(least, SequenceSearch.Solve(problem, new SearchRules(1, 400), null, CancellationToken.None).Cost);
        }
    }

    [Fact]
    public void Same_seed_and_iterations_give_the_same_order_each_job_once_and_its_true_cost()
    {
        SequenceProblem problem = WeekData.Drawn(5, 40);
        SearchRules rules = new(7, 150, 2);
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
        SequenceAnswer answer = SequenceSearch.Solve(WeekData.Drawn(9, 50), new SearchRules(1, 400), a => told.Add(a.Cost), CancellationToken.None);
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

    private static IEnumerable<SequenceMove> Shifts(int jobs, int longest) =>
        from first in Enumerable.Range(0, jobs)
        from middle in Enumerable.Range(first + 1, jobs - first - 1)
        from end in Enumerable.Range(middle + 1, jobs - middle)
        where Math.Min(middle - first, end - middle) <= longest
        select new SequenceMove(first, middle, middle, end);

    private static IEnumerable<SequenceMove> Swaps(int jobs) =>
        from one in Enumerable.Range(0, jobs)
        from other in Enumerable.Range(one + 1, jobs - one - 1)
        select new SequenceMove(one, one + 1, other, other + 1);

    // All runs of places at which both have the same jobs.
    private static IEnumerable<int[]> RunsOf(int[] parent, int[] child) =>
        from start in Enumerable.Range(0, child.Length)
        from end in Enumerable.Range(start + 1, child.Length - start)
        where parent.AsSpan(start, end - start).SequenceEqual(child.AsSpan(start, end - start))
        select child[start..end];

    private static int[] RestOf(int[] order, int[] run) => [.. order.Where(j => !run.Contains(j))];

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
