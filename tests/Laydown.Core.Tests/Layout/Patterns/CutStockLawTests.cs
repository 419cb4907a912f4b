using Laydown.Instances.Rectangles;
using Laydown.Layout.Patterns;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Search;

namespace Laydown.Core.Tests.Layout.Patterns;

public sealed class CutStockLawTests
{
    [Theory]
    [InlineData(2, false)]
    [InlineData(2, true)]
    [InlineData(3, false)]
    [InlineData(3, true)]
    public void Every_layout_told_on_the_way_can_be_cut_holds_what_is_wanted_and_costs_no_less_than_the_bound(int stages, bool upright)
    {
        for (int seed = 1; seed <= 5; seed++)
        {
            bool mayTurn = seed % 2 == 0;
            RectInstance instance = StockData.Random(seed);
            RectProblem problem = StockData.Problem(instance, stages, upright, mayTurn);
            List<RectLayout> told = [];

            (RectLayout layout, double bound) = CutStock.SolveWithBound(problem, new(seed, 6), told.Add, CancellationToken.None);

            Assert.All(told.Append(layout), l => Assert.Empty(RectChecker.Faults(instance, StockData.Bins(l), new(mayTurn, true, stages, upright))));
            Assert.All(told, l => Assert.True(StockData.Cost(problem, l) >= bound * (1 - 1e-9)));
            Assert.Equal(told.Min(l => StockData.Cost(problem, l)), StockData.Cost(problem, layout));
        }
    }

    [Fact]
    public void The_same_seed_tries_and_workers_give_the_same_layout()
    {
        RectProblem problem = StockData.Problem(StockData.Random(3), 2, upright: false, mayTurn: true);
        string one = Words(CutStock.Solve(problem, new(5, 12, 2), null, CancellationToken.None));
        Assert.Equal(one, Words(CutStock.Solve(problem, new(5, 12, 2), null, CancellationToken.None)));
    }

    [Fact]
    public void What_the_sheets_there_cannot_hold_is_missing_and_no_sheet_is_used_that_is_not_there()
    {
        RectInstance instance = StockData.Random(4, copies: 2);
        RectLayout layout = CutStock.Solve(StockData.Problem(instance, 2, upright: false, mayTurn: false), new(1, 8), null, CancellationToken.None);

        Assert.True(layout.Missing.Sum() > 0);
        Assert.All(Enumerable.Range(0, 2), s => Assert.True(layout.Sheets.Where(l => l.Stock == s).Sum(l => l.Repeats) <= 2));
        for (int p = 0; p < instance.Items.Count; p++)
            Assert.Equal(instance.Items[p].Copies, layout.Missing[p] + layout.Sheets.Sum(s => s.Repeats * s.Spots.Count(o => o.Piece == p)));
    }

    [Fact]
    public void A_piece_larger_than_every_sheet_is_missing_and_the_others_are_cut()
    {
        RectProblem problem = new([new("s", 100, 100, null, 1, [])], [new("large", 101, 5, 3, false), new("small", 50, 50, 8, false)], new(Laydown.Layout.Sheets.CutProcess.Guillotine, 2));
        RectLayout layout = CutStock.Solve(problem, new(1, 4), null, CancellationToken.None);
        Assert.Equal([3, 0], layout.Missing);
        Assert.Equal(2, Assert.Single(layout.Sheets).Repeats);
    }

    // 1 µm as unit: the tables go by coarse steps, and equal pieces side by side still fill a side to the last.
    [Fact]
    public void Micrometres_lose_nothing_where_equal_pieces_fill_a_side()
    {
        RectProblem problem = new(
            [new("s", 2_440_000, 1_220_000, null, 1, [])],
            [new("a", 610_000, 305_000, 160, false), new("b", 813_333, 406_666, 27, false)], new(Laydown.Layout.Sheets.CutProcess.Guillotine, 2));
        RectLayout layout = CutStock.Solve(problem, new(1, 4), null, CancellationToken.None);
        Assert.Equal(13, layout.Sheets.Sum(s => s.Repeats));
    }

    [Fact]
    public void A_stop_at_once_still_gives_a_whole_layout()
    {
        RectInstance instance = StockData.Random(2);
        RectLayout layout = CutStock.Solve(StockData.Problem(instance, 3, upright: false, mayTurn: false), new SearchRules(), null, new CancellationToken(canceled: true));
        Assert.Empty(RectChecker.Faults(instance, StockData.Bins(layout), new(false, true, 3, false)));
    }

    private static string Words(RectLayout layout) => string.Join(';', layout.Sheets.Select(s => Invariant($"{s.Stock}x{s.Repeats}:{string.Join(',', s.Spots)}")));
}
