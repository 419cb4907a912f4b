using Laydown.Layout.Repeats;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Core.Tests.Layout;

public sealed class WorkAndTurnRefusalTests
{
    private static readonly SizeMm Board = new(1220, 2440);

    [Fact]
    public void A_piece_that_stands_alone_across_the_turn_has_no_other_to_lie_on_but_may_be_turned_about_the_other_edge()
    {
        Piece wide = new("wide", new(1000, 700), 5, 4, MayTurn: false);

        UnplacedPiece piece = Assert.Single(Solve(wide, SheetTurn.Sideways).Unplaced);
        Assert.Equal(4, piece.Copies);
        Assert.Contains("cannot be turned onto itself", piece.Found, StringComparison.Ordinal);
        Assert.Contains("another edge to turn about", piece.Wanted, StringComparison.Ordinal);
        Assert.True(Solve(wide, SheetTurn.HeadToFoot).IsWhole);
    }

    [Fact]
    public void A_bleed_narrower_than_the_register_is_refused_with_both_widths()
    {
        UnplacedPiece piece = Assert.Single(Solve(new("p", new(300, 200), 1.5, 4, true), SheetTurn.Sideways).Unplaced);

        Assert.Contains("bleed 1.5 mm", piece.Found, StringComparison.Ordinal);
        Assert.Contains("1.6 mm", piece.Wanted, StringComparison.Ordinal);
    }

    [Fact]
    public void A_piece_larger_than_the_board_is_refused_by_its_size()
    {
        UnplacedPiece piece = Assert.Single(Solve(new("p", new(3000, 200), 5, 1, true), SheetTurn.Sideways).Unplaced);

        Assert.Contains("fit on", piece.Wanted, StringComparison.Ordinal);
    }

    private static LayoutResult Solve(Piece piece, SheetTurn turn) => WorkAndTurn.OnBoards(piece, Board, 8, new(), new(turn, true, 1.6));
}
