using Laydown.Layout.Boards;
using Laydown.Layout.Search;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Jobs;

/// <summary>Lays any job out with the search that is made for it: rectangles on boards, rectangles on rolls, contours on either, blanks in lanes on a belt.</summary>
public static class JobSolver
{
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
        if (job.Belt is not null)
        {
            JobLayout lanes = LaneJob.Solve(writer);
            better?.Invoke(lanes);
            return lanes;
        }

        if (JobDemands.IsByContour(job))
            return ContourJob.Solve(writer, rules, better, stop);
        return job.Stocks[0].Kind == JobStockKind.Roll ? new RollJob(writer, better, stop).Solve(rules) : OnBoards(writer, rules, better, stop);
    }

    private static JobLayout OnBoards(JobWriter writer, SearchRules rules, Action<JobLayout>? better, CancellationToken stop)
    {
        JobRules cut = writer.Job.Rules;
        BoardRules boards = new(
            new(writer.Job.Stocks[0].WidthMm, writer.Job.Stocks[0].HeightMm), 0, cut.ApartMm, cut.Process, OffcutLeastSideMm: cut.OffcutLeastSideMm,
            Stocks: [.. writer.Job.Stocks.Select(s => new BoardStock(s.Id, new(s.WidthMm, s.HeightMm), s.Copies, s.Price, s.EdgeMarginMm, Apart(s.KeepOutsMm, cut.ApartMm)))])
        {
            OneLayout = cut.OneLayout,
        };
        JobLayout Written(LayoutResult result) => writer.Write([.. result.Sheets.Select(s => (s.StockId!, s))], result.Unplaced);
        return Written(BoardLayout.Solve(writer.Rectangles(), boards, [], rules, better is null ? null : l => better(Written(l)), stop));
    }

    // The search keeps the gap before a place kept out; behind it, the place is taken as wider by the gap.
    private static IReadOnlyList<RectMm>? Apart(IReadOnlyList<RectMm>? outs, double apartMm) =>
        outs is null ? null : [.. outs.Select(o => new RectMm(o.XMm, o.YMm, o.WidthMm + apartMm, o.HeightMm + apartMm))];
}
