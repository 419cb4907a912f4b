using Laydown.Core.Tests.Press;
using Laydown.Measures;
using Laydown.Plan.StockRoom;
using Laydown.Press.Stocks;
using Xunit;

namespace Laydown.Core.Tests.StockRoom;

public sealed class StockMovesRefusalTests
{
    private static readonly StockLot Lot = StockMovesLawTests.In("L-1", 1).Lot! with { OnHand = 5, Reserved = [new("R-1", 2)] };

    [Theory]
    [InlineData(StockMoveKind.Consume, 6, "R-1", "6 of L-1", "at most 5, which is there and not kept back for other runs")]
    [InlineData(StockMoveKind.Consume, 4, "R-2", "4 of L-1", "at most 3, which is there and not kept back for other runs")]
    [InlineData(StockMoveKind.Consume, 4, null, "4 of L-1", "at most 3, which is there and not kept back for other runs")]
    [InlineData(StockMoveKind.Reserve, 4, "R-2", "4 of L-1", "at most 3, which is free")]
    [InlineData(StockMoveKind.Release, 3, "R-1", "3 of L-1", "at most 2, which is kept back for that run")]
    [InlineData(StockMoveKind.Count, -1, null, "-1", "0 to 1000000")]
    [InlineData(StockMoveKind.Receive, -2, null, "-2", "over 0, at most 1000000")]
    [InlineData(StockMoveKind.Receive, 0, null, "0", "over 0, at most 1000000")]
    [InlineData(StockMoveKind.Receive, 1000000, null, "1000000 of L-1", "at most 999995, which is room for")]
    public void A_quantity_that_cannot_be_is_refused_and_named(StockMoveKind kind, int quantity, string? run, string found, string wanted)
    {
        InputFault fault = Assert.Single(StockMoves.Do([Lot], [StockMovesLawTests.Of(kind, "L-1", quantity, run)], [Presses.Board()]).Faults);
        Assert.Equal(("/moves/0/quantity", found, wanted), (fault.Field, fault.Found, fault.Wanted));
    }

    [Fact]
    public void One_move_that_cannot_be_done_keeps_all_others_from_being_done()
    {
        Reading<StockChange> change = StockMoves.Do([Lot], [StockMovesLawTests.Of(StockMoveKind.Consume, "L-1", 3), StockMovesLawTests.Of(StockMoveKind.Consume, "L-1", 1)], [Presses.Board()]);
        Assert.Equal("/moves/1/quantity", Assert.Single(change.Faults).Field);
    }

    [Fact]
    public void Half_a_board_is_refused() =>
        Refused(StockMovesLawTests.Of(StockMoveKind.Consume, "L-1", 1.5m), "/moves/0/quantity", "1.5");

    [Fact]
    public void A_lot_that_is_not_there_is_refused() => Refused(StockMovesLawTests.Of(StockMoveKind.Consume, "L-9", 1), "/moves/0/lotId", "L-9");

    [Fact]
    public void A_new_lot_of_a_stock_nobody_keeps_is_refused() =>
        Refused(StockMovesLawTests.In("L-9", 1) with { Lot = Lot with { Id = "L-9", StockId = "gold" } }, "/moves/0/lot/stockId", "gold");

    [Fact]
    public void A_rest_larger_than_its_board_is_refused() =>
        Refused(StockMovesLawTests.In("L-9", 1) with { Lot = Lot with { Id = "L-9", WidthMm = 1221 } }, "/moves/0/lot/widthMm", "1221 × 2440 mm");

    [Fact]
    public void A_move_without_a_name_or_a_place_is_refused()
    {
        Refused(StockMovesLawTests.Of(StockMoveKind.Count, "L-1", 1) with { By = " " }, "/moves/0/by", "nothing");
        Refused(StockMovesLawTests.Of(StockMoveKind.Place, "L-1", 0), "/moves/0/place", "nothing");
        Refused(StockMovesLawTests.Of(StockMoveKind.Reserve, "L-1", 1), "/moves/0/runId", "nothing");
    }

    private static void Refused(StockMove move, string field, string found)
    {
        InputFault fault = Assert.Single(StockMoves.Do([Lot], [move], [Presses.Board()]).Faults);
        Assert.Equal((field, found), (fault.Field, fault.Found));
    }
}
