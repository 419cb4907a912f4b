using Laydown.Layout.FreePacking;
using Laydown.Layout.Packing;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout.FreePacking;

public sealed class FreeSearchLawTests
{
    public static IEnumerable<TheoryDataRow<int>> Seeds() => Enumerable.Range(1, 40).Select(s => new TheoryDataRow<int>(s));

    [Theory, MemberData(nameof(Seeds))]
    public void Layouts_are_right_whatever_stocks_keep_outs_and_copies_there_are(int seed)
    {
        RectProblem problem = FreeCases.Drawn(seed);
        RectLayout layout = FreeSearch.Solve(problem, new(seed, 400), null, CancellationToken.None);

        Assert.Empty(FreeCases.Faults(problem, layout));
        Assert.True(layout.Missing.Any(m => m > 0) || FreeCases.Cost(problem, layout) >= FreeBounds.Cost(new(problem)) - 1e-6);
        Assert.All(layout.Sheets, s => Assert.NotEmpty(s.Spots));
    }

    [Theory, MemberData(nameof(Seeds))]
    public void Offcuts_are_bare_wide_enough_and_apart_from_each_other(int seed)
    {
        RectProblem problem = FreeCases.Drawn(seed);
        foreach (RectSheet sheet in FreeSearch.Solve(problem, new(seed, 100), null, CancellationToken.None).Sheets)
        {
            RectStock stock = problem.Stocks[sheet.Stock];
            Box board = new(0, 0, stock.Width, stock.Height);
            Box[] taken = [.. sheet.Spots.Select(s => s.Place), .. stock.KeepOuts];
            Assert.All(sheet.Offcuts, o => Assert.True(board.Holds(o) && Math.Min(o.W, o.H) >= problem.Rules.OffcutLeastSide && !taken.Any(t => t.Overlaps(o))));
            Assert.DoesNotContain(sheet.Offcuts, o => sheet.Offcuts.Any(p => p != o && p.Overlaps(o)));
            Assert.True(problem.Rules.OffcutLeastSide > 0 || sheet.Offcuts.Count == 0);
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Seed_and_tries_decide_the_layout_whatever_the_workers_are_doing(int workers)
    {
        RectProblem problem = FreeCases.Published(mayTurn: true).ElementAt(17).Problem;
        string one = FreeCases.Text(FreeSearch.Solve(problem, new(7, 3000, workers), null, CancellationToken.None));
        Assert.Equal(one, FreeCases.Text(FreeSearch.Solve(problem, new(7, 3000, workers), null, CancellationToken.None)));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Every_answer_told_is_right_and_no_worse_and_the_last_comes_back(int workers)
    {
        foreach (RectProblem problem in Enumerable.Range(1, 8).Select(FreeCases.Drawn).Append(FreeCases.Published(false).ElementAt(10).Problem))
        {
            List<RectLayout> told = [];
            RectLayout last = FreeSearch.Solve(problem, new(3, 1500, workers), told.Add, CancellationToken.None);
            Assert.All(told, l => Assert.Empty(FreeCases.Faults(problem, l)));
            Assert.Equal(FreeCases.Text(last), FreeCases.Text(told[^1]));
            double[] missing = [.. told.Select(l => l.Missing.Select((m, i) => (double)m * problem.Pieces[i].Area).Sum())];
            Assert.Equal(missing.OrderDescending(), missing);
        }
    }

    [Fact]
    public void A_stop_asked_for_before_the_start_still_gives_a_whole_layout()
    {
        (string _, RectProblem problem, int _, int best) = FreeCases.Published(false).Last();
        RectLayout layout = FreeSearch.Solve(problem, new(), null, new CancellationToken(canceled: true));
        Assert.Empty(FreeCases.Faults(problem, layout));
        Assert.InRange(layout.Sheets.Sum(s => s.Repeats), best, best * 2);
    }

    [Fact]
    public void A_stop_asked_for_on_the_way_gives_the_best_so_far()
    {
        RectProblem problem = FreeCases.Published(false).ElementAt(12).Problem;
        using CancellationTokenSource stop = new();
        int told = 0;
        RectLayout layout = FreeSearch.Solve(problem with { Rules = problem.Rules with { OffcutLeastSide = 1 } }, new(), _ =>
        {
            if (++told == 2)
                stop.Cancel();
        }, stop.Token);
        Assert.Empty(FreeCases.Faults(problem, layout));
    }

    [Fact]
    public void The_cheapest_mix_of_sizes_is_found()
    {
        // One large board carries ten squares for 100, two small ones the six wanted for 80.
        RectProblem problem = new(
            [new("large", 100, 40, null, 100, []), new("small", 60, 20, null, 40, [])],
            [new("square", 20, 20, 6, false)],
            new(CutProcess.Free));
        RectLayout layout = FreeSearch.Solve(problem, new(1, 500), null, CancellationToken.None);
        Assert.Equal(80, FreeCases.Cost(problem, layout));
        Assert.Equal((1, 2), (Assert.Single(layout.Sheets).Stock, layout.Sheets[0].Repeats));
    }

    [Fact]
    public void Few_boards_in_stock_take_what_they_can_and_the_rest_is_told_missing()
    {
        RectProblem problem = new([new("one", 30, 30, 1, 5, [])], [new("large", 30, 20, 2, false), new("small", 10, 10, 4, false)], new(CutProcess.Free));
        RectLayout layout = FreeSearch.Solve(problem, new(1, 200), null, CancellationToken.None);
        Assert.Equal([1, 1], layout.Missing);
    }

    [Fact]
    public void Pieces_go_around_what_is_locked()
    {
        // A locked piece in the middle leaves a frame of 10 all round: four bars of 40 x 10 fit it only as a pinwheel.
        RectProblem problem = new([new("board", 50, 50, 1, 1, [new(10, 10, 30, 30)])], [new("bar", 40, 10, 4, true)], new(CutProcess.Free));
        RectLayout layout = FreeSearch.Solve(problem, new(1, 2000), null, CancellationToken.None);
        Assert.Empty(FreeCases.Faults(problem, layout));
        Assert.Equal([0], layout.Missing);
    }

    [Fact]
    public void A_board_less_leaves_the_last_one_as_empty_as_it_gets()
    {
        // Bars of 60, 30, 30 and 20 across two boards of 100: the fullest board is 60 and 30, so the other carries 50.
        RectProblem problem = new(
            [new("board", 100, 100, null, 1, [])], [new("a", 100, 60, 1, false), new("b", 100, 30, 2, false), new("c", 100, 20, 1, false)],
            new(CutProcess.Free, OffcutLeastSide: 10));
        RectLayout layout = FreeSearch.Solve(problem, new(1, 5000), null, CancellationToken.None);
        Assert.Equal(2, layout.Sheets.Sum(s => s.Repeats));
        Assert.Equal(5000, layout.Sheets.Min(s => s.Spots.Sum(p => p.Place.Area)));
    }

    [Fact]
    public void Ten_thousand_labels_are_sheets_with_repeats()
    {
        RectProblem problem = new(
            [new("board", 1_202_000, 2_422_000, null, 1, [])], [new("a", 88_000, 58_000, 10_000, true), new("b", 107_000, 76_000, 1500, false)], new(CutProcess.Free));
        RectLayout layout = FreeSearch.Solve(problem, new(1, 20), null, CancellationToken.None);
        Assert.Equal(11_500, layout.Sheets.Sum(s => s.Repeats * s.Spots.Count));
        Assert.InRange(layout.Sheets.Sum(s => s.Repeats), FreeBounds.Cost(new(problem)), FreeBounds.Cost(new(problem)) * 1.05);
    }

    [Fact]
    public void A_group_shares_a_board_where_that_costs_nothing()
    {
        RectProblem problem = new(
            [new("board", 100, 100, null, 1, [])],
            [new("a", 100, 50, 1, false, 0), new("b", 100, 49, 1, false), new("c", 100, 48, 1, false), new("d", 100, 47, 1, false, 0)],
            new(CutProcess.Free));
        RectLayout layout = FreeSearch.Solve(problem, new(1, 500), null, CancellationToken.None);
        Assert.Contains(layout.Sheets, s => s.Spots.Select(p => p.Piece).Order().SequenceEqual([0, 3]));
    }
}
