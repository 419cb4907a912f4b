using Laydown.Instances.Rectangles;
using Laydown.Layout.Guillotine;
using Laydown.Layout.Rectangles;

namespace Laydown.Core.Tests.Layout.Guillotine;

public sealed class CutWindowsLawTests
{
    // 21 000 pieces: more than are searched as one, of boards of which some are few.
    private static readonly RectInstance Instance = Drawn();

    [Fact]
    public void Windows_leave_nothing_out_keep_to_the_boards_there_are_and_cost_no_more_than_the_first_answer()
    {
        RectProblem problem = GuillotineCase.Problem(Instance, true, offcutLeast: 60);
        RectLayout first = GuillotineSearch.Solve(problem, new(1, 0), null, default);
        List<double> told = [];
        RectLayout layout = GuillotineSearch.Solve(problem, new(1, 600), l => told.Add(GuillotineCase.Cost(Instance, l)), default);

        Assert.True(CutWindows.Wanted(problem));
        Assert.Empty(RectChecker.Faults(Instance, GuillotineCase.Bins(layout), new(true, Guillotine: true)));
        Assert.All(layout.Missing, m => Assert.Equal(0, m));
        Assert.True(GuillotineCase.Cost(Instance, layout) <= GuillotineCase.Cost(Instance, first));
        Assert.Equal(told.OrderDescending(), told);
    }

    [Fact]
    public void The_same_seed_and_iterations_give_the_same_layout_with_two_workers()
    {
        RectProblem problem = GuillotineCase.Problem(Instance, false);
        string Text() => string.Join('\n', GuillotineSearch.Solve(problem, new(3, 300, Workers: 2), null, default).Sheets
            .SelectMany(s => s.Spots.Select(p => Invariant($"{s.Stock} {s.Repeats} {p}"))));
        Assert.Equal(Text(), Text());
    }

    [Fact]
    public void Pieces_that_no_sheet_is_left_for_are_told_as_missing()
    {
        RectProblem problem = GuillotineCase.Problem(Instance, false);
        RectProblem few = problem with { Stocks = [.. problem.Stocks.Select(s => s with { Copies = 2 })] };
        RectLayout layout = GuillotineSearch.Solve(few, new(1, 1), null, default);
        Assert.Equal(2 * few.Stocks.Count, layout.Sheets.Sum(s => s.Repeats));
        Assert.Equal(21_000, layout.Missing.Sum() + layout.Sheets.Sum(s => s.Repeats * s.Spots.Count));
    }

    private static RectInstance Drawn()
    {
        Random chance = new(11);
        RectBin[] bins = [new(700, 600, null, 200), new(500, 500, 40, 110), new(900, 650, 15, 270)];
        RectItem[] items = [.. Enumerable.Range(0, 3000).Select(_ => new RectItem(20 + chance.Next(120), 20 + chance.Next(120), 7, -1))];
        return new("drawn", bins, items, [], new Dictionary<string, string>());
    }
}
