using Laydown.Layout.Boards;
using Laydown.Layout.Jobs;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout;

/// <summary>What a job of boards may wish for: sets together, early work first, many copies, one layout, copies over what is wanted.</summary>
public sealed class BoardWishesLawTests
{
    [Theory]
    [InlineData(CutProcess.Free)]
    [InlineData(CutProcess.Guillotine)]
    public void A_set_lies_on_one_board_where_that_costs_no_board_more(CutProcess process)
    {
        // Eight pieces of which four fill a board: any two may share one, so keeping sets together costs nothing.
        string[] sets = ["oak", "elm", "oak", "elm", "elm", "oak", "elm", "oak"];
        JobPiece[] pieces = [.. sets.Select((s, i) => new JobPiece(Invariant($"p{i}"), 1, 490 + i, 490, null, [0]) { KeepWith = s })];
        JobLayout layout = Solved(new(null, pieces, [new("board", JobStockKind.Board, 1000, 1000, null, 10)], new(Process: process)), 3000);
        Assert.Equal(2, layout.Sheets.Sum(s => s.Repeats));
        Assert.Equal([new("elm", 1, 1), new SetSpread("oak", 1, 1)], JobNotes.Spreads(layout));
        Assert.Empty(JobNotes.Of(layout));
    }

    [Fact]
    public void A_set_that_no_board_holds_is_told_with_its_boards()
    {
        JobPiece[] pieces = [new("a", 3, 600, 600, null, [0]) { KeepWith = "kit" }];
        JobLayout layout = Solved(new(null, pieces, [new("board", JobStockKind.Board, 1000, 1000, null, 10)], new()), 50);
        Assert.Equal([new SetSpread("kit", 3, 2)], JobNotes.Spreads(layout));
        Assert.Equal("Set kit could not be kept together: it lies on 3 boards; by its area 2 might hold it.", Assert.Single(JobNotes.Of(layout)));
    }

    [Fact]
    public void Boards_with_earlier_work_come_first_even_where_they_are_emptier()
    {
        JobPiece[] pieces =
        [
            new("late", 1, 990, 990, null, [0]) { Due = new(2026, 12, 9) }, new("early", 1, 600, 600, null, [0]) { Due = new(2026, 12, 1) },
        ];
        JobLayout layout = Solved(new(null, pieces, [new("board", JobStockKind.Board, 1000, 1000, null, 10)], new()), 50);
        Assert.Equal(["early", "late"], layout.Sheets.Select(s => s.Spots[0].PieceId));
    }

    [Theory]
    [InlineData(CutProcess.Free)]
    [InlineData(CutProcess.Guillotine)]
    public void A_hundred_thousand_copies_of_few_pieces_are_laid_out_whole_in_few_layouts(CutProcess process)
    {
        JobPiece[] pieces = [new("a", 40_000, 200, 150, null, null), new("b", 35_000, 310, 95, null, null), new("c", 25_000, 120, 120, null, null)];
        JobLayout layout = Solved(new(null, pieces, [new("board", JobStockKind.Board, 1220, 2440, null, 30, 10)], new(4, 0, process)), 400);
        Assert.Empty(layout.Unplaced);
        Assert.InRange(layout.Sheets.Count, 1, 12);

        // The bound by area, pieces and board grown by the kerf.
        double area = (40_000d * 204 * 154) + (35_000d * 314 * 99) + (25_000d * 124 * 124);
        Assert.InRange(layout.Sheets.Sum(s => s.Repeats), Math.Ceiling(area / (1204 * 2424)), 1.05 * area / (1204 * 2424));
    }

    [Fact]
    public void Many_copies_keep_to_what_is_on_hand_and_take_the_cheaper_board()
    {
        JobStock[] stocks = [new("half", JobStockKind.Board, 1220, 1220, 7, 12, 10), new("whole", JobStockKind.Board, 1220, 2440, null, 30, 10)];
        JobLayout layout = Solved(new(null, [new("a", 300, 250, 180, null, null), new("b", 120, 400, 300, null, null)], stocks, new(4, 0, CutProcess.Guillotine)), 1000);
        Assert.Empty(layout.Unplaced);
        Assert.Equal(7, layout.Sheets.Where(s => s.StockId == "half").Sum(s => s.Repeats));
    }

    [Fact]
    public void One_layout_for_the_whole_run_is_one_and_makes_fewer_than_one_copy_too_many_for_each_board()
    {
        JobPiece[] pieces = [new("a", 100, 300, 200, null, null), new("b", 41, 450, 350, null, null), new("c", 7, 600, 500, null, null)];
        JobLayout layout = Solved(new(null, pieces, [new("board", JobStockKind.Board, 1220, 2440, null, 30, 10)], new(4) { OneLayout = true }), 100);
        JobSheet sheet = Assert.Single(layout.Sheets);
        Assert.Empty(layout.Unplaced);
        foreach (JobPiece piece in pieces)
            Assert.InRange(sheet.Repeats * sheet.Spots.Count(s => s.PieceId == piece.Id), piece.Quantity, piece.Quantity + sheet.Repeats - 1);
    }

    [Fact]
    public void Pieces_of_which_no_board_holds_one_copy_each_are_told_where_one_layout_is_wanted()
    {
        JobPiece[] pieces = [new("a", 10, 900, 900, null, null), new("b", 10, 800, 800, null, null)];
        JobLayout layout = Solved(new(null, pieces, [new("board", JobStockKind.Board, 1000, 1000, null, 30)], new() { OneLayout = true }), 100);
        Assert.Empty(layout.Sheets);
        Assert.Equal([("a", 10), ("b", 10)], layout.Unplaced.Select(u => (u.PieceId, u.Copies)));
    }

    [Theory]
    [InlineData(CutProcess.Free)]
    [InlineData(CutProcess.Guillotine)]
    public void Copies_over_what_is_wanted_fill_the_last_board_up_to_what_is_allowed(CutProcess process)
    {
        // Nine fill a board; ten are wanted, so the second board has room for eight.
        JobLayout Made(int allowed) => Solved(
            new(null, [new("a", 10, 330, 330, null, null) { OversAllowed = allowed }], [new("board", JobStockKind.Board, 1000, 1000, null, 10)], new(Process: process)), 100);
        Assert.Equal(10, Count(Made(0)));
        Assert.Equal(13, Count(Made(3)));
        Assert.Equal(18, Count(Made(100)));
        Assert.Equal("a: 10 asked for, 13 made, 3 more than asked for.", Assert.Single(JobNotes.Of(Made(3))));
    }

    [Fact]
    public void More_copies_than_allowed_break_the_rules()
    {
        JobLayout layout = Solved(
            new(null, [new("a", 10, 330, 330, null, null) { OversAllowed = 3 }], [new("board", JobStockKind.Board, 1000, 1000, null, 10)], new()), 100);
        JobLayout fewer = layout with { Job = layout.Job with { Pieces = [layout.Job.Pieces[0] with { OversAllowed = 2 }] } };
        Assert.Equal("10 to 12 in all", Assert.Single(JobChecks.Faults(fewer)).Wanted);
    }

    private static int Count(JobLayout layout) => layout.Sheets.Sum(s => s.Repeats * s.Spots.Count);

    private static JobLayout Solved(LayoutJob job, long iterations)
    {
        JobLayout layout = JobSolver.Solve(job, new(Seed: 1, Iterations: iterations), null, CancellationToken.None);
        Assert.Empty(JobChecks.Faults(layout));
        return layout;
    }
}
