using Laydown.Measures;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;
using Laydown.Shop.Orders;
using Laydown.Shop.Press;
using Laydown.Shop.Run;
using Laydown.Store;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>Press files are made again, and a run is let go anew, where something that is printed changed; not where stock, ink or money did.</summary>
public sealed class RunInputsLawTests : IDisposable
{
    private static readonly CancellationToken None = CancellationToken.None;
    private readonly ShopBench shop = new();
    private readonly ShopBench.FakeFiles files = new();

    /// <summary>What the shop has less or more of, or pays otherwise: nothing of it is printed.</summary>
    public static TheoryData<string> Unprinted => ["on hand", "reorder point", "price of stock", "tank level", "price of ink", "cost of an hour", "care"];

    /// <summary>What is printed, or stands on the papers of the run.</summary>
    public static TheoryData<string> Printed => ["thickness", "tolerance", "width", "reflectance", "tank", "ink name", "channels", "copies", "artwork"];

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task Stock_kept_back_and_taken_leaves_press_files_and_the_letting_go_as_they_are()
    {
        shop.Put("TW-1", Samples.Order("TW-1", ShopBench.Item("TW-1-1")));
        RunRecord run = Assert.Single((await DayLawTests.WorkAsync(shop)).Runs);
        await new SqliteShopStore(shop.Folder.StoreFile).OpenAsync(None);
        SqliteStockRoom room = new(shop.Folder.StoreFile);
        ShelvedStocks shelf = new(shop.Catalogue.Stocks);
        Catalogue shelved = shop.Catalogue with { Stocks = shelf };
        MoveStock move = new(shelved, room);
        RunStock ofRun = new(shelved, shop.Store, move, shop.Clock);
        using MakeRun make = new(shop.Folder, shelved, shop.Store, files, shop.Board);
        await new ReleaseRun(shelved, shop.Store, make, shop.Clock).ReleaseAsync(run.Run.Id, Sound(run, shelved), None);

        int described = OnHand();
        Assert.True((await new ReceiveStock(shelved, move, shop.Clock).ReceiveAsync(new(run.Run.StockId, 40, "rack 1"), None)).IsTaken);
        Assert.NotEqual(described, OnHand());
        await StandsAsync();
        Assert.True((await ofRun.DoAsync(run.Run.Id, RunStockStep.Reserve, "Ada", null, None)).IsTaken);
        Assert.Equal(40 - run.Run.SheetCount, OnHand());
        await StandsAsync();
        Assert.True((await ofRun.DoAsync(run.Run.Id, RunStockStep.Take, "Ada", null, None)).IsTaken);
        Assert.Contains(await room.LotsAsync(None), l => l.BornOf == run.Run.Id);
        await StandsAsync();
        Assert.Equal(0, files.Made);

        // A board of another thickness is another set-up: files are made again and the sheet must be measured anew.
        Catalogue thicker = shelved with { Stocks = [.. shelved.Stocks.Select(s => s.Id == run.Run.StockId ? s with { ThicknessMm = s.ThicknessMm + 0.5 } : s)] };
        using MakeRun again = new(shop.Folder, thicker, shop.Store, files, shop.Board);
        RunRecord made = (await again.MakeAsync(run.Run.Id, None)).Value;
        Assert.Equal((RunState.Completed, 1), (made.State, files.Made));
        Assert.Null(made.LetGo);
        Assert.NotEqual(run.InputHash, made.InputHash);

        int OnHand() => shelf.Single(s => s.Id == run.Run.StockId).OnHand;

        async Task StandsAsync()
        {
            shop.Board.Report(new(run.Run.Id, "asked", 0));
            RunRecord now = (await make.MakeAsync(run.Run.Id, None)).Value;
            Assert.Equal("made before; nothing changed", shop.Board.Latest(run.Run.Id)?.Step);
            Assert.Equal((run.InputHash, RunState.Completed), (now.InputHash, now.State));
            Assert.NotNull((await shop.Store.RunAsync(run.Run.Id, None))!.LetGo);
        }
    }

    [Theory, MemberData(nameof(Unprinted))]
    public async Task What_is_not_printed_is_no_input(string what)
    {
        RunContext context = await ContextAsync();
        RunContext other = Otherwise(context, what);
        Assert.NotEqual(context, other);
        Assert.Equal(await RunContexts.HashAsync(context, None), await RunContexts.HashAsync(other, None));
    }

    [Theory, MemberData(nameof(Printed))]
    public async Task What_is_printed_is_an_input(string what)
    {
        RunContext context = await ContextAsync();
        Assert.NotEqual(await RunContexts.HashAsync(context, None), await RunContexts.HashAsync(Otherwise(context, what), None));
    }

    [Fact]
    public async Task A_rest_that_is_printed_on_is_told_by_its_size_not_by_how_many_there_are()
    {
        RunContext context = await ContextAsync();
        Stock rest = context.Stock with { Id = "rest", WidthMm = 700, LengthMm = 900, OtherSizeOf = context.Stock.Id, OnHand = 3 };
        RunContext beside = context with { Beside = [rest] };
        string hash = await RunContexts.HashAsync(beside, None);
        Assert.Equal(hash, await RunContexts.HashAsync(context with { Beside = [rest with { OnHand = 0 }] }, None));
        Assert.NotEqual(hash, await RunContexts.HashAsync(context with { Beside = [rest with { WidthMm = 710 }] }, None));
        Assert.NotEqual(hash, await RunContexts.HashAsync(context, None));
    }

    private static RunContext Otherwise(RunContext context, string what)
    {
        PressDescription press = context.Press;
        Stock stock = context.Stock;
        ItemRecord item = context.Items[0];
        return what switch
        {
            "on hand" => context with { Stock = stock with { OnHand = stock.OnHand + 7 } },
            "reorder point" => context with { Stock = stock with { ReorderAt = 12, OrderTo = 40 } },
            "price of stock" => context with { Stock = stock with { Price = Money.FromUnits(99m) } },
            "tank level" => context with { Press = press with { Tanks = [.. press.Tanks.Select(t => t with { LevelMl = 1 })] } },
            "price of ink" => context with { InkSet = context.InkSet with { Inks = [.. context.InkSet.Inks.Select(i => i with { PricePerLitre = Money.FromUnits(500m) })] } },
            "cost of an hour" => context with { Press = press with { Costs = press.Costs with { PerHour = Money.FromUnits(500m) } } },
            "care" => context with { Press = press with { Care = press.Care is null ? PressCare.Usual(press) : null } },
            "thickness" => context with { Stock = stock with { ThicknessMm = stock.ThicknessMm + 0.1 } },
            "tolerance" => context with { Stock = stock with { ThicknessToleranceMm = stock.ThicknessToleranceMm + 0.1 } },
            "width" => context with { Stock = stock with { WidthMm = stock.WidthMm + 1 } },
            "reflectance" => context with { Stock = stock with { ReflectancePercent = stock.ReflectancePercent - 1 } },
            "tank" => context with { Press = press with { Tanks = [.. press.Tanks.Select(t => t with { CapacityMl = t.CapacityMl + 1 })] } },
            "ink name" => context with { InkSet = context.InkSet with { Inks = [.. context.InkSet.Inks.Select(i => i with { Name = i.Name + " II" })] } },
            "channels" => context with { Press = press with { Channels = [.. press.Channels.Skip(1)] } },
            "copies" => context with { Run = context.Run with { Sheets = [.. context.Run.Sheets.Select(s => s with { Repeats = s.Repeats + 1 })] } },
            "artwork" => context with { Items = [item with { Artwork = item.Artwork! with { Sha256 = new('0', 64) } }] },
            _ => throw new ArgumentOutOfRangeException(nameof(what), what, "One of the fields of this test."),
        };
    }

    private static Laydown.Plan.Runs.MeasuredSheet Sound(RunRecord run, Catalogue catalogue)
    {
        double mm = catalogue.Stocks.First(s => s.Id == run.Run.StockId).ThicknessMm;
        return new([mm, mm, mm, mm, mm], 0.1, "Ada", "Bo", mm, true);
    }

    private async Task<RunContext> ContextAsync()
    {
        shop.Put("TW-1", Samples.Order("TW-1", ShopBench.Item("TW-1-1")));
        RunRecord run = Assert.Single((await DayLawTests.WorkAsync(shop)).Runs);
        return RunContexts.Gather(run.Run, shop.Catalogue, [.. (await shop.Store.OrdersAsync(None)).SelectMany(o => o.Items)]).Value;
    }
}
