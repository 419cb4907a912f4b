using Laydown.Layout.Boards;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout;

public sealed class BoardLayoutRefusalTests
{
    private static readonly BoardRules Rules = new(new(1220, 2440), 10, 4, CutProcess.Free);

    [Fact]
    public void A_piece_larger_than_the_board_comes_back_and_the_rest_is_laid_out()
    {
        LayoutResult result = BoardLayout.Solve([new("large", new(1300, 1300), 0, 2, true), new("small", new(300, 300), 0, 3, true)], Rules, default);
        UnplacedPiece unplaced = Assert.Single(result.Unplaced);
        Assert.Equal(("large", 2), (unplaced.PieceId, unplaced.Copies));
        Assert.Contains("1200 × 2420 mm", unplaced.Wanted, StringComparison.Ordinal);
        Assert.Equal(3, Assert.Single(result.Sheets).Placements.Count);
    }

    [Fact]
    public void A_piece_that_would_fit_only_turned_comes_back_where_turning_is_barred() =>
        Assert.Single(BoardLayout.Solve([new("a", new(2400, 1000), 0, 1, false)], Rules, default).Unplaced);

    [Fact]
    public void One_id_twice_is_refused() =>
        Assert.Throws<ArgumentException>(() => BoardLayout.Solve([new("a", new(9, 9), 0, 1, true), new("a", new(9, 9), 0, 1, true)], Rules, default));

    [Theory]
    [InlineData(0, 100, 1)]
    [InlineData(100, 0, 1)]
    [InlineData(100, 100, 0)]
    public void Nothing_to_print_is_refused(double width, double height, int quantity) => Assert.ThrowsAny<ArgumentException>(
        () => BoardLayout.Solve([new("a", new(width, height), 0, quantity, true)], Rules, default));

    [Fact]
    public void Margins_that_leave_nothing_are_refused() =>
        Assert.ThrowsAny<ArgumentException>(() => BoardLayout.Solve([new("a", new(9, 9), 0, 1, true)], Rules with { EdgeMarginMm = 610 }, default));

    [Fact]
    public void A_cancelled_search_ends_with_an_exception() => Assert.Throws<OperationCanceledException>(
        () => BoardLayout.Solve([new("a", new(9, 9), 0, 1, true)], Rules, new CancellationToken(canceled: true)));
}
