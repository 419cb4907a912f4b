using Laydown.Layout.Boards;
using Laydown.Layout.Rolls;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;

namespace Laydown.Layout.Jobs;

/// <summary>Lays any job out with the search that is made for it: rectangles on boards, rectangles on rolls, contours on either.</summary>
public static class JobSolver
{
    /// <summary>Iterations of one round of the searches that keep nothing when they are stopped.</summary>
    private const int RoundIterations = 200;

    /// <summary>The best layout found.</summary>
    /// <param name="job">Sound, as <see cref="JobDemands"/> asks.</param>
    /// <param name="rules">Chance, iterations, workers.</param>
    /// <param name="better">Told every better layout, one call at a time; may be null.</param>
    /// <param name="stop">Ends the search; the best so far is returned.</param>
    /// <exception cref="ArgumentException">The job is not sound.</exception>
    public static JobLayout Solve(LayoutJob job, SearchRules rules, Action<JobLayout>? better, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(rules);
        JobWriter writer = new(job, new JobShapes(job), rules);
        if (JobDemands.IsByContour(job))
            return ContourJob.Solve(writer, rules, better, stop);
        return job.Stocks[0].Kind == JobStockKind.Roll
            ? InRounds((seed, steps, token) => OnRolls(writer, seed, steps, token), int.MinValue, rules, better, stop)
            : InRounds((seed, steps, token) => OnBoards(writer, seed, steps, token), LeastBoards(writer), rules, better, stop);
    }

    // Round after round with a chance of its own; a round that is stopped is lost, those before are kept.
    private static JobLayout InRounds(
        Func<int, int, CancellationToken, JobLayout> round, int leastBoards, SearchRules rules, Action<JobLayout>? better, CancellationToken stop)
    {
        JobLayout best = round(rules.Seed, 0, CancellationToken.None);
        better?.Invoke(best);
        int seed = rules.Seed;
        for (long left = rules.Iterations; left > 0 && !stop.IsCancellationRequested && !IsLeast(best, leastBoards); left -= RoundIterations)
        {
            if (Tried(round, seed++, (int)Math.Min(left, RoundIterations), stop) is not { } next)
                break;
            if (Rank(next).CompareTo(Rank(best)) >= 0)
                continue;
            best = next;
            better?.Invoke(best);
        }

        return best;
    }

    private static JobLayout? Tried(Func<int, int, CancellationToken, JobLayout> round, int seed, int steps, CancellationToken stop)
    {
        try
        {
            return round(seed, steps, stop);
        }
        catch (OperationCanceledException)
        {
            return null;
        }
    }

    // One board cannot be bettered but in its offcut, which the first rounds find.
    private static bool IsLeast(JobLayout layout, int leastBoards) =>
        layout.Unplaced.Count == 0 && layout.Sheets.Count == 1 && layout.Sheets[0].Repeats == leastBoards;

    private static (int, double, double, int, double) Rank(JobLayout layout) => (
        layout.Unplaced.Sum(u => u.Copies), layout.Cost, layout.Sheets.Sum(s => s.Repeats * s.Size.AreaM2), layout.Sheets.Count,
        -layout.Sheets.SelectMany(s => s.OffcutsMm).Select(o => o.Size.AreaM2).DefaultIfEmpty(0).Max());

    private static int LeastBoards(JobWriter writer) => BoardLayout.LeastBoards(writer.Rectangles(), BoardRulesOf(writer, 1, 0));

    private static JobLayout OnBoards(JobWriter writer, int seed, int steps, CancellationToken stop)
    {
        LayoutResult result = BoardLayout.Solve(writer.Rectangles(), BoardRulesOf(writer, seed, steps), stop);
        return writer.Write([.. result.Sheets.Select(s => (writer.Job.Stocks[0].Id, s))], result.Unplaced);
    }

    private static BoardRules BoardRulesOf(JobWriter writer, int seed, int steps)
    {
        JobStock stock = writer.Job.Stocks[0];
        return new(
            new(stock.WidthMm, stock.HeightMm), stock.EdgeMarginMm, writer.Job.Rules.ApartMm, writer.Job.Rules.Process, seed, steps,
            writer.Job.Rules.OffcutLeastSideMm);
    }

    private static JobLayout OnRolls(JobWriter writer, int seed, int steps, CancellationToken stop)
    {
        // Of several rolls the one on which most finds a place, then the cheapest.
        JobRules cut = writer.Job.Rules;
        return writer.Job.Stocks.Select(stock =>
        {
            RollRules roll = new(
                stock.WidthMm, stock.HeightMm, stock.EdgeMarginMm, cut.ApartMm, cut.LeadInMm, cut.LeadOutMm, cut.Process, seed, steps);
            LayoutResult result = RollLayout.Solve(writer.Rectangles(), roll, stop);
            return writer.Write([.. result.Sheets.Select(s => (stock.Id, s))], result.Unplaced);
        }).MinBy(Rank)!;
    }
}
