using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Laydown.Bench.Layout;
using Laydown.Layout.Search;
using Laydown.Plan.Week;

namespace Laydown.Bench.Week;

/// <summary>The planner of the week on drawn weeks: beside the search of sequences where both reckon the same, and how long 200 runs on two presses take.</summary>
internal static class PlannerBench
{
    private const double UsualSeconds = 5;
    private const int LargeRuns = 200;

    /// <summary>All weeks.</summary>
    public static PlannerResult Run(BenchArguments arguments, TextWriter progress, CancellationToken cancellation)
    {
        double before = LayoutStop.CpuNow().TotalSeconds, seconds = arguments.Seconds > 0 ? arguments.Seconds : UsualSeconds;
        PlannerTime[] times =
        [
            Time("200 runs, 2 presses", DrawnWeeks.Shifts(LargeRuns, 2, 1, false), cancellation), Time("the same with two benches", DrawnWeeks.Shifts(LargeRuns, 2, 1, true), cancellation),
            Time("with care of 18 kinds, shut at weekends, stops over the limit of lines", DrawnWeeks.WithCare(LargeRuns, 1), cancellation),
        ];
        List<PlannerRow> rows = [];
        foreach (int runs in new[] { 20, 40, 60, 100 })
            for (int seed = 1; seed <= 3; seed++)
            {
                rows.Add(Row(runs, seed, seconds, cancellation));
                progress.WriteLine(Invariant($"{runs} runs, seed {seed}: {rows[^1].Planned}, as a sequence {rows[^1].Sequence}"));
            }

        string all = string.Join('\n', rows.Select(r => r.Planned).Concat(times.SelectMany(t => new[] { t.First, t.Planned, t.Again })));
        return new(
            arguments.Name, seconds, DateTime.UtcNow.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), rows, times,
            LayoutStop.CpuNow().TotalSeconds - before, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(all))));
    }

    private static PlannerRow Row(int runs, int seed, double seconds, CancellationToken cancellation)
    {
        WeekProblem problem = DrawnWeeks.Open(runs, seed);
        using LayoutStop stop = new(seconds, false, Environment.ProcessorCount, cancellation);
        SequenceAnswer sequence = SequenceSearch.Solve(DrawnWeeks.AsSequence(problem), new SearchRules(1, Workers: Environment.ProcessorCount), null, stop.Token);
        WeekPlan first = WeekPlanner.Solve(problem, new SearchRules(1, 0), null, null, cancellation);
        long start = Stopwatch.GetTimestamp();
        WeekPlan plan = WeekPlanner.Solve(problem, new SearchRules(1, WeekPlanner.UsualIterations), null, null, cancellation);
        return new(runs, seed, first.Cost, plan.Cost, sequence.Cost, Stopwatch.GetElapsedTime(start).TotalSeconds);
    }

    private static PlannerTime Time(string name, WeekProblem problem, CancellationToken cancellation)
    {
        long start = Stopwatch.GetTimestamp();
        WeekPlan first = WeekPlanner.Solve(problem, new SearchRules(1, 0), null, null, cancellation);
        WeekReasons.Of(problem, first);
        double ofFirst = Stopwatch.GetElapsedTime(start).TotalSeconds;
        WeekPlan plan = WeekPlanner.Solve(problem, new SearchRules(1, WeekPlanner.UsualIterations), null, null, cancellation);

        // A run is put at another time, as by a drag.
        WeekProblem dragged = problem with { Holds = [new(plan.Places[0].RunId, plan.Places[0].PressId, plan.Places[0].Start + 480)] };
        start = Stopwatch.GetTimestamp();
        WeekPlan again = WeekPlanner.Solve(dragged, new SearchRules(1, WeekPlanner.UsualIterations), plan, null, cancellation);
        WeekReasons.Of(dragged, again);
        return new(name, ofFirst, Stopwatch.GetElapsedTime(start).TotalSeconds, first.Cost, plan.Cost, again.Cost);
    }
}
