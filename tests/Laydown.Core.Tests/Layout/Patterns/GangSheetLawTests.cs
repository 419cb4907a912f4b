using Laydown.Instances.Rectangles;
using Laydown.Layout.Packing;
using Laydown.Layout.Patterns;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout.Patterns;

public sealed class GangSheetLawTests
{
    [Fact]
    public void One_layout_gives_every_job_its_copies_in_no_fewer_prints_than_the_area_allows()
    {
        for (int seed = 1; seed <= 6; seed++)
        {
            Chance chance = new(seed);
            RectInstance instance = new(
                Invariant($"random {seed}"), [new(100, 70, null, 1)],
                [.. Enumerable.Range(0, 4).Select(_ => new RectItem(10 + chance.Below(20), 8 + chance.Below(15), 100 * (1 + chance.Below(20)), -1))], [], new Dictionary<string, string>());
            RectProblem problem = StockData.Problem(instance, 3, upright: false, mayTurn: false);

            RectSheet sheet = GangSheet.Solve(problem, new(seed, 0), null, CancellationToken.None)!;

            Assert.Empty(RectChecker.Faults(instance, StockData.Bins(new([sheet], [])), new(false, true, 3, MoreAllowed: true)));
            Assert.InRange(sheet.Repeats, GangSheet.Bound(problem), int.MaxValue);
        }
    }

    // Four quarters of a sheet: two copies of each of two jobs, or three and one.
    [Theory]
    [InlineData(100, 100, 50)]
    [InlineData(300, 100, 100)]
    [InlineData(400, 100, 134)]
    public void Copies_on_the_sheet_go_by_what_the_jobs_want(int one, int other, int prints)
    {
        RectProblem problem = new([new("s", 100, 100, null, 1, [])], [new("a", 50, 50, one, false), new("b", 50, 50, other, false)], new(CutProcess.Guillotine, 3));
        Assert.Equal(prints, GangSheet.Solve(problem, new(1, 0), null, CancellationToken.None)!.Repeats);
    }

    [Fact]
    public void Jobs_that_do_not_fit_together_give_nothing()
    {
        RectProblem problem = new([new("s", 100, 100, null, 1, [])], [new("a", 90, 90, 5, false), new("b", 50, 50, 5, false)], new(CutProcess.Guillotine, 3));
        Assert.Null(GangSheet.Solve(problem, new(1, 0), null, CancellationToken.None));
    }
}
