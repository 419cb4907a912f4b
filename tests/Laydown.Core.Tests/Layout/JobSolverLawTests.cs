using Laydown.Layout.Jobs;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout;

/// <summary>Jobs of rectangles on boards: several sizes, limited copies, places kept out, either way of cutting, judged by the job's own rules.</summary>
public sealed class JobSolverLawTests
{
    [Theory]
    [InlineData(CutProcess.Free)]
    [InlineData(CutProcess.Guillotine)]
    public void Several_sizes_with_places_kept_out_are_laid_out_by_the_rules_and_cheap_offcuts_first(CutProcess process)
    {
        // Three more of the large pieces than one board takes, so that the cheapest is a board and the offcut.
        LayoutJob job = Job(process, new("board", JobStockKind.Board, 1220, 2440, null, 20, 8), new("offcut", JobStockKind.Board, 700, 900, 1, 1, 5, KeepOutsMm: [new(0, 0, 60, 60)]));
        List<JobLayout> told = [];
        job = job with { Pieces = [.. job.Pieces.Select(p => p.Id == "a" ? p with { Quantity = 14 } : p)] };
        JobLayout layout = JobSolver.Solve(job, new(Seed: 3, Iterations: 2000), told.Add, CancellationToken.None);
        Assert.Empty(layout.Unplaced);
        Assert.Empty(JobChecks.Faults(layout));
        Assert.Contains(layout.Sheets, s => s.StockId == "offcut");
        Assert.NotEmpty(told);
        Assert.All(told, l => Assert.Empty(JobChecks.Faults(l)));
        Assert.Equal(layout.Cost, told.Where(l => l.Unplaced.Count == 0).Min(l => l.Cost), 6);
    }

    [Theory]
    [InlineData(CutProcess.Free)]
    [InlineData(CutProcess.Guillotine)]
    public void What_the_boards_there_are_cannot_take_is_told(CutProcess process)
    {
        LayoutJob job = Job(process, new JobStock("offcut", JobStockKind.Board, 700, 900, 1, 1, 5));
        JobLayout layout = JobSolver.Solve(job, new(Iterations: 300), null, CancellationToken.None);
        Assert.Equal(22, layout.Sheets.Sum(s => s.Repeats * s.Spots.Count) + layout.Unplaced.Sum(u => u.Copies));
        Assert.NotEmpty(layout.Unplaced);
        Assert.Equal(1, layout.Sheets.Sum(s => s.Repeats));
    }

    private static LayoutJob Job(CutProcess process, params JobStock[] stocks) => new(
        "signs",
        [new("a", 10, 400, 300, null, null), new("b", 8, 610, 220, null, [0, 180]), new("c", 4, 150, 150, null, null)],
        stocks, new JobRules(ToolMm: 3, GapMm: 1, Process: process));
}
