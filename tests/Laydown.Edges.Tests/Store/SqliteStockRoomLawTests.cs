using Laydown.Measures;
using Laydown.Plan.StockRoom;
using Laydown.Plan.Upkeep;
using Laydown.Press.Inks;
using Laydown.Press.Stocks;
using Laydown.Shop.Press;
using Laydown.Store;

namespace Laydown.Edges.Tests.Store;

public sealed class SqliteStockRoomLawTests : IAsyncLifetime
{
    private static readonly CancellationToken None = CancellationToken.None;
    private static readonly DateTimeOffset Now = new(2026, 12, 1, 8, 0, 0, TimeSpan.FromHours(1));
    private static readonly StockLot Lot = new("L-0001", "board", StockKind.Board, 1220, 2440, "rack 1", 0, [], new(2026, 11, 1), null, "M-77");
    private readonly TempFolder folder = new();

    private string Path => System.IO.Path.Combine(folder.Path, "shop.db");

    public async ValueTask InitializeAsync() => await new SqliteShopStore(Path).OpenAsync(None);

    public ValueTask DisposeAsync()
    {
        folder.Dispose();
        return ValueTask.CompletedTask;
    }

    [Fact]
    public async Task Lots_and_moves_come_back_with_every_field()
    {
        StockLot lot = Lot with { OnHand = 7.25m, Reserved = [new("R-1", 2.5m)], BornOf = "R-0" };
        StockMove move = new(StockMoveKind.Receive, lot.Id, 7.25m, Now, "Ann", "R-1", "why", lot, "there");
        await new SqliteStockRoom(Path).ChangeAsync(_ => Reading.Of(new StockChange([lot], [move, move with { Why = "later" }])), None);

        SqliteStockRoom room = new(Path);
        Assert.Equivalent(lot, Assert.Single(await room.LotsAsync(None)), strict: true);
        Assert.Equal(["later", "why"], (await room.MovesAsync("L-0001", 9, None)).Select(m => m.Why));
        Assert.Equivalent(move, (await room.MovesAsync(null, 9, None))[1], strict: true);
        Assert.Empty(await room.MovesAsync("L-0002", 9, None));
    }

    [Fact]
    public async Task A_change_that_is_refused_leaves_nothing()
    {
        await FillAsync(5);
        InputFault fault = new("stock room", null, "quantity", "6", "5");
        Assert.Equal(fault, Assert.Single((await new SqliteStockRoom(Path).ChangeAsync(_ => Reading.Refused<StockChange>(fault), None)).Faults));
        SqliteStockRoom room = new(Path);
        Assert.Equal((5m, 1), (Assert.Single(await room.LotsAsync(None)).OnHand, (await room.MovesAsync(null, 9, None)).Count));
    }

    /// <summary>Forty writers that each take a board of thirty: thirty get one, ten are refused, none is left and none is taken twice.</summary>
    [Fact]
    public async Task Writers_at_the_same_time_never_take_the_same_board()
    {
        await FillAsync(30);
        StockMove take = new(StockMoveKind.Consume, "L-0001", 1, Now, "Ann");
        bool[] taken = await Task.WhenAll(Enumerable.Range(0, 40).Select(_ => Task.Run(async () =>
            (await new SqliteStockRoom(Path).ChangeAsync(lots => StockMoves.Do(lots, [take], []), None)).IsTaken)));
        SqliteStockRoom room = new(Path);
        Assert.Equal((30, 0m, 31), (taken.Count(t => t), Assert.Single(await room.LotsAsync(None)).OnHand, (await room.MovesAsync(null, 99, None)).Count));
    }

    [Fact]
    public async Task What_was_read_at_a_press_comes_back()
    {
        PressCarePage page = new(new("long-belt", Now, [new("C", 900.5, "A-1", new(2027, 3, 1))], [new("lamps", Now, 3.5, 12)], Now), [new("A-2", InkRole.Cyan, 1000, new(2027, 3, 1), "shelf")]);
        SqlitePressCareBook book = new(Path);
        Assert.Null(await book.ReadAsync("long-belt", None));
        await book.ChangeAsync("long-belt", old => old is null ? Reading.Of(page) : throw new InvalidOperationException(), None);
        Assert.Equivalent(page, await new SqlitePressCareBook(Path).ReadAsync("long-belt", None), strict: true);
        await book.ChangeAsync("long-belt", old => Reading.Of(old! with { Packs = [] }), None);
        Assert.Empty((await book.ReadAsync("long-belt", None))!.Packs);
    }

    private Task FillAsync(decimal quantity) => new SqliteStockRoom(Path).ChangeAsync(
        _ => Reading.Of(new StockChange([Lot with { OnHand = quantity }], [new(StockMoveKind.Receive, Lot.Id, quantity, Now, "Ann", Lot: Lot)])), None);
}
