using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Press.Stocks;
using Laydown.Shop.Check;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>A board that is kept in several sizes: offcuts are taken first where they cost less, each size in a run of its own, and none is promised twice.</summary>
public sealed class StockSizesLawTests : IDisposable
{
    private static readonly CancellationToken None = CancellationToken.None;
    private readonly ShopBench shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task Pieces_that_fit_an_offcut_are_printed_on_it_and_the_reason_is_told()
    {
        IReadOnlyList<RunRecord> runs = await PlanAsync([Offcut(1300, 900, 2.5m, 1)], ("TW-1", 4));
        RunRecord run = Assert.Single(runs);
        Assert.Equal("fluted-5-offcut", run.Run.StockId);
        Assert.Equal((1300.0, 900.0), (run.Run.Sheets[0].Sheet.WidthMm, run.Run.Sheets[0].Sheet.HeightMm));
        Assert.Contains("2.50", run.Run.Cost.Lines[0].Because, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_offcut_that_holds_one_item_only_leaves_the_other_to_the_board()
    {
        IReadOnlyList<RunRecord> runs = await PlanAsync([Offcut(1300, 900, 2.5m, 1)], ("TW-1", 4), ("TW-2", 40));
        Assert.Equal(["fluted-5", "fluted-5-offcut"], runs.Select(r => r.Run.StockId).Order(StringComparer.Ordinal));
        RunRecord small = Assert.Single(runs, r => r.Run.StockId == "fluted-5-offcut");
        Assert.Equal("TW-1-1", Assert.Single(small.Run.Items).ItemId);
        Assert.Equal([4, 40], runs.SelectMany(r => r.Run.Items).Select(i => i.Pieces).Order());
    }

    [Fact]
    public async Task Where_the_board_takes_all_at_no_more_cost_no_offcut_is_spent()
    {
        // Both items share one board; the second would need it anyhow.
        IReadOnlyList<RunRecord> runs = await PlanAsync([Offcut(1300, 900, 2.5m, 1)], ("TW-1", 2), ("TW-2", 4));
        Assert.Equal("fluted-5", Assert.Single(runs).Run.StockId);
    }

    [Fact]
    public async Task One_offcut_is_not_promised_to_two_runs()
    {
        // Another build makes a run of its own.
        await PutAsync("TW-2", ShopBench.Item("TW-2-1") with { Build = new(false, true, false, null, null, 0, 0, false) });
        IReadOnlyList<RunRecord> runs = await PlanAsync([Offcut(1300, 900, 2.5m, 1)], ("TW-1", 4));
        Assert.Equal(["fluted-5", "fluted-5-offcut"], runs.Select(r => r.Run.StockId).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task A_dear_size_and_one_of_which_too_few_are_there_are_left_alone()
    {
        IReadOnlyList<RunRecord> runs = await PlanAsync([Offcut(1300, 900, 99m, 1), Offcut(700, 500, 0.5m, 3) with { Id = "fluted-5-rest" }], ("TW-1", 4));
        Assert.Equal("fluted-5", Assert.Single(runs).Run.StockId);
    }

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

    private Task PutAsync(string order, Item item)
    {
        shop.Put(order, new(order, "Saltmarsh Observatory", ShopBench.Today, "", [item]));
        return Task.CompletedTask;
    }

    private async Task<IReadOnlyList<RunRecord>> PlanAsync(IReadOnlyList<Stock> sizes, params (string Order, int Quantity)[] orders)
    {
        foreach ((string order, int quantity) in orders)
            await PutAsync(order, ShopBench.Item(order + "-1") with { Quantity = quantity });
        await shop.TakeOrders().TakeAsync(None);
        await new CheckItems(shop.Folder, shop.Catalogue, shop.Store, new ShopBench.FakeReader(), new ShopBench.FakeRenderer()).CheckAsync(None);
        Catalogue catalogue = shop.Catalogue with { Stocks = [.. shop.Catalogue.Stocks, .. sizes] };
        PlannedRuns planned = await new PlanRuns(catalogue, shop.Store, new ShopBench.FakeMeasure()).PlanAsync(ShopBench.Today, None);
        Assert.Empty(planned.Held);
        return planned.Runs;
    }
}
