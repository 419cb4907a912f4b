using Laydown.Layout.FreePacking;
using Laydown.Layout.Packing;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout.FreePacking;

public sealed class FreeSearchRefusalTests
{
    [Theory]
    [InlineData(0, 10, 1, "width of a piece")]
    [InlineData(10, -1, 1, "height of a piece")]
    [InlineData(10, 10, 0, "copies of a piece")]
    [InlineData(1_000_000_001, 10, 1, "width of a piece")]
    public void A_piece_out_of_range_is_refused_by_name(int width, int height, int copies, string named) =>
        Assert.Contains(named, Refused(new("s", 100, 100, null, 1, []), new("p", width, height, copies, true)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(0, 10, 1, 1.0, "width of a stock")]
    [InlineData(10, 0, 1, 1.0, "height of a stock")]
    [InlineData(10, 10, -1, 1.0, "copies of a stock")]
    [InlineData(10, 10, 1, double.NaN, "cost of a stock")]
    [InlineData(10, 10, 1, -0.5, "cost of a stock")]
    public void A_stock_out_of_range_is_refused_by_name(int width, int height, int copies, double cost, string named) =>
        Assert.Contains(named, Refused(new("s", width, height, copies, cost, []), new("p", 5, 5, 1, true)).Message, StringComparison.Ordinal);

    [Fact]
    public void A_piece_larger_than_any_board_comes_back_as_missing()
    {
        RectProblem problem = new(
            [new("s", 100, 50, null, 1, []), new("taken", 200, 200, 0, 1, [])], [new("wide", 101, 10, 3, true), new("high", 20, 60, 2, false), new("right", 20, 60, 1, true)], new(CutProcess.Free));
        Assert.Equal([3, 2, 0], FreeSearch.Solve(problem, new(1, 100), null, CancellationToken.None).Missing);
    }

    [Fact]
    public void A_board_that_is_one_keep_out_carries_nothing()
    {
        RectProblem problem = new([new("s", 100, 50, null, 1, [new Box(-5, -5, 200, 200)])], [new("p", 10, 10, 3, true)], new(CutProcess.Free));
        RectLayout layout = FreeSearch.Solve(problem, new(1, 100), null, CancellationToken.None);
        Assert.Empty(layout.Sheets);
        Assert.Equal([3], layout.Missing);
    }

    [Fact]
    public void No_pieces_need_no_board() =>
        Assert.Empty(FreeSearch.Solve(new([new("s", 1, 1, null, 1, [])], [], new(CutProcess.Free)), new(), null, CancellationToken.None).Sheets);

    private static ArgumentOutOfRangeException Refused(RectStock stock, RectPiece piece) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FreeSearch.Solve(new([stock], [piece], new(CutProcess.Free)), new(1, 1), null, CancellationToken.None));
}
