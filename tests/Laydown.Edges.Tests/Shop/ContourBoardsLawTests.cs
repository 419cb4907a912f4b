using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Plan.StockRoom;
using Laydown.Press.Stocks;
using Laydown.Shop.Check;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>Items cut to contours on boards: offcuts and other sizes first where they cost less, none overdrawn; the rest of the last board in one piece; copies over what is asked.</summary>
public sealed class ContourBoardsLawTests : IDisposable
{
    private static readonly CancellationToken None = CancellationToken.None;
    private readonly ShopBench shop = new();

    public void Dispose() => shop.Dispose();

    [Theory]
    [InlineData(1, "fluted-5-half")]
    [InlineData(20, "fluted-5-offcut")]
    public async Task The_cheapest_size_of_which_there_are_enough_is_taken_and_a_size_that_would_run_out_is_left_to_others(int onHand, string expected)
    {
        // Some five offcuts cost less than four half boards, and these less than two whole ones.
        Stock half = Offcut(1220, 1220, 4m, 20) with { Id = "fluted-5-half", Name = "Half board" };
        Laydown.Plan.Runs.Run run = Assert.Single(await PlanAsync([Offcut(1300, 900, 2.5m, onHand), half], Triangles("TW-1", 24))).Run;
        Assert.Equal(expected, run.StockId);
        Assert.InRange(run.SheetCount, 2, 20);
        Assert.All(run.Sheets, s => Assert.NotNull(s.Outlines));
        Assert.Equal(24, run.Sheets.Sum(s => s.Repeats * s.Placements.Count));
    }

    [Fact]
    public async Task One_offcut_is_not_promised_to_two_runs_of_contours()
    {
        // Another build makes a run of its own.
        IReadOnlyList<RunRecord> runs = await PlanAsync(
            [Offcut(1300, 900, 2.5m, 1)], Triangles("TW-1", 3), Triangles("TW-2", 3) with { Build = new(false, true, false, null, null, 0, 0, false) });
        Assert.Equal(["fluted-5", "fluted-5-offcut"], runs.Select(r => r.Run.StockId).Order(StringComparer.Ordinal));
        Assert.All(runs, r => Assert.Equal(1, r.Run.SheetCount));
    }

    [Fact]
    public async Task The_rest_of_the_last_board_comes_off_over_a_whole_side_and_into_the_stock_room()
    {
        Laydown.Plan.Runs.Run run = Assert.Single(await PlanAsync([], Triangles("TW-1", 6))).Run;
        SheetLayout sheet = Assert.Single(run.Sheets);
        RectMm rest = Assert.Single(sheet.Offcuts);
        Assert.True(rest.WidthMm == sheet.Sheet.WidthMm || rest.HeightMm == sheet.Sheet.HeightMm);

        // Six triangles of 600 × 400 mm in pairs want a quarter of the board; two thirds and more stay.
        Assert.InRange(rest.Size.AreaM2 / sheet.Sheet.AreaM2, 0.6, 0.76);
        Stock board = shop.Catalogue.Stocks.Single(s => s.Id == "fluted-5");
        Assert.Equal(rest.Size.AreaM2, Assert.Single(StockPicks.Rests(run, board)) is var (w, l, n) ? n * w * l / 1e6 : 0, 0.005);
    }

    [Fact]
    public async Task Copies_over_what_is_asked_fill_the_last_board_and_quote_run_and_notes_tell_both()
    {
        Item item = Triangles("TW-1", 6) with { OversAllowed = 4 };
        RunRecord record = Assert.Single(await PlanAsync([], item));
        Laydown.Plan.Runs.RunItem made = Assert.Single(record.Run.Items);
        Assert.Equal((10, 6), (made.Pieces, made.Asked));
        Assert.Equal("10 pieces, 6 asked for", made.PiecesInWords);
        Assert.Equal(1, record.Run.SheetCount);
        Assert.Contains("TW-1-1: 6 asked for, 10 made: 4 more fill the last board.", record.Run.LayoutNotes);

        Reading<Quote> quote = await new QuoteOrder(shop.Folder, shop.Catalogue, shop.Store, new ShopBench.FakeDocuments(), shop.Clock).QuoteAsync("TW-1", None);
        Assert.Equal("6 asked for, 10 made: 4 more come in addition.", Assert.Single(quote.Value.Lines).MadeInWords);
    }

    [Fact]
    public async Task Copies_over_what_is_asked_make_a_roll_no_longer()
    {
        Item item = ShopBench.Item("TW-1-1", stockId: "label-roll") with { WidthMm = 180, HeightMm = 120, Quantity = 10, OversAllowed = 50 };
        double alone = Assert.Single(Assert.Single(await PlanAsync([], item with { OversAllowed = 0 })).Run.Sheets).Sheet.HeightMm;
        using ShopBench other = new();
        Laydown.Plan.Runs.Run run = Assert.Single(await PlanAsync(other, [], item)).Run;
        Assert.Equal(alone, Assert.Single(run.Sheets).Sheet.HeightMm);

        // Three abreast, so the fourth row has room for two more.
        Assert.Equal((12, 10), (run.Items[0].Pieces, run.Items[0].Asked));
        Assert.Contains("TW-1-1: 10 asked for, 12 made: 2 more fill the roll.", run.LayoutNotes);
    }

    [Theory]
    [InlineData("kit", "", "kit", 2, 2, 2)]
    [InlineData("a", "b", "c", 5, 5, 6)]
    public async Task Sets_of_an_order_are_told_where_they_lie_on_more_boards_than_their_area_needs(string one, string two, string three, int a, int b, int c)
    {
        Item Sign(string id, string set, int quantity) =>
            ShopBench.Item(id, stockId: "fluted-5") with { WidthMm = 560, HeightMm = 560, Quantity = quantity, KeepWith = set.Length > 0 ? set : null };
        Item[] items = [Sign("TW-1-1", one, a), Sign("TW-2-1", two, b), Sign("TW-3-1", three, c)];
        Laydown.Plan.Runs.Run run = Assert.Single(await PlanAsync([], items)).Run;
        Assert.Equal(a + b + c, run.Sheets.Sum(s => s.Repeats * s.Placements.Count));

        // Reckoned from the sheets alone: boards that carry the set, and boards its area would fill.
        double board = 1220 * 2440;
        string[] apart = [.. items.Where(i => i.KeepWith is not null).GroupBy(i => i.KeepWith!).Where(set =>
        {
            HashSet<string> ids = [.. set.Select(i => i.Id)];
            int boards = run.Sheets.Where(s => s.Placements.Any(p => ids.Contains(p.PieceId))).Sum(s => s.Repeats);
            return boards > Math.Ceiling(set.Sum(i => i.Quantity * i.Printed.WidthMm * i.Printed.HeightMm) / board);
        }).Select(set => set.Key)];
        Assert.Equal(apart.Select(set => Invariant($"Set {set} could not be kept together: ")), run.LayoutNotes.Select(n => n[..(n.IndexOf(':', StringComparison.Ordinal) + 2)]));

        // Six signs go on one board; sixteen fill two, and one of three sets has to lie on both.
        Assert.Equal(a + b + c > 8, apart.Length > 0);
    }

    private static Item Triangles(string order, int quantity) => ShopBench.Item(order + "-1", artwork: "triangle.pdf", stockId: "fluted-5") with
    {
        WidthMm = 600,
        HeightMm = 400,
        Quantity = quantity,
        Finishing = [new(FinishingKind.CutContour, 1)],
    };

    private Stock Offcut(double widthMm, double lengthMm, decimal price, int onHand) => shop.Catalogue.Stocks.Single(s => s.Id == "fluted-5") with
    {
        Id = "fluted-5-offcut",
        Name = "Offcut",
        WidthMm = widthMm,
        LengthMm = lengthMm,
        Price = Money.FromUnits(price),
        OnHand = onHand,
        OtherSizeOf = "fluted-5",
    };

    private Task<IReadOnlyList<RunRecord>> PlanAsync(IReadOnlyList<Stock> sizes, params Item[] items) => PlanAsync(shop, sizes, items);

    private static async Task<IReadOnlyList<RunRecord>> PlanAsync(ShopBench shop, IReadOnlyList<Stock> sizes, params Item[] items)
    {
        Catalogue catalogue = shop.Catalogue with { Stocks = [.. shop.Catalogue.Stocks, .. sizes] };
        foreach (Item item in items)
            shop.Put(item.Id[..4], new(item.Id[..4], "Saltmarsh Observatory", ShopBench.Today, "", [item]));
        await new TakeOrders(shop.Folder, catalogue, new Laydown.Intake.Orders.OrderReader(), shop.Store, shop.Clock).TakeAsync(None);
        await new CheckItems(shop.Folder, catalogue, shop.Store, new SizedReader(items), new ShopBench.FakeRenderer()).CheckAsync(None);
        PlannedRuns planned = await new PlanRuns(catalogue, shop.Store, new ShopBench.FakeMeasure()).PlanAsync(ShopBench.Today, None);
        Assert.Empty(planned.Held);
        return planned.Runs;
    }
}
