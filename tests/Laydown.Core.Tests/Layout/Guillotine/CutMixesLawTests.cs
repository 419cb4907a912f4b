using Laydown.Layout.Guillotine;
using Laydown.Layout.Packing;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout.Guillotine;

public sealed class CutMixesLawTests
{
    private static readonly int[][] Boards = [[60, 100, 3], [45, 100, 2], [100, 17, 4]];

    // Sixteen pieces of 1 000: a board costs its area.
    private static RectProblem Problem => new(
        [.. Boards.Select((b, i) => new RectStock(Invariant($"{i}"), b[0], b[1], b[2], b[0] * b[1], []))],
        [new("a", 25, 40, 7, true), new("b", 50, 20, 9, true)], new(CutProcess.Guillotine));

    [Fact]
    public void Sheets_are_opened_where_any_set_of_them_has_the_area_under_the_limit_and_only_such_a_set()
    {
        CutJob job = new(Problem, 1);
        CutMixes mixes = new(job, new Chance(7));
        for (long limit = 14_000; limit <= 36_000; limit += 50)
        {
            CutForest forest = new(job);
            bool there = Sets().Any(area => area >= 16_000 && area <= limit);
            Assert.Equal(there, mixes.Open(forest, limit));
            Assert.InRange(forest.Cost, there ? 16_000 : 0, limit);
            Assert.All(forest.Free.ToArray(), free => Assert.InRange(free, 0, 4));
        }
    }

    // One large and one narrow board hold all without waste; any other set costs more.
    [Fact]
    public void A_jigsaw_of_two_boards_that_differ_is_found_again()
    {
        RectProblem problem = new(
            [new("large", 59, 100, 6, 5900, []), new("narrow", 41, 100, 5, 4100, [])],
            [
                new("a", 59, 33, 1, false), new("b", 31, 67, 1, false), new("c", 28, 40, 1, false), new("d", 28, 27, 1, false),
                new("e", 41, 45, 1, false), new("f", 20, 55, 1, false), new("g", 21, 19, 1, false), new("h", 21, 36, 1, false),
            ],
            new(CutProcess.Guillotine));
        RectLayout layout = GuillotineSearch.Solve(problem, new(1, 40_000), null, default);
        Assert.Equal(10_000, layout.Sheets.Sum(s => s.Repeats * problem.Stocks[s.Stock].Cost));
        Assert.All(layout.Missing, m => Assert.Equal(0, m));
    }

    private static IEnumerable<int> Sets() =>
        from one in Enumerable.Range(0, Boards[0][2] + 1)
        from two in Enumerable.Range(0, Boards[1][2] + 1)
        from three in Enumerable.Range(0, Boards[2][2] + 1)
        select (one * 6000) + (two * 4500) + (three * 1700);
}
