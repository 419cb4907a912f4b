using Laydown.Edges.Tests.UseCases;
using Laydown.Measures;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;
using Laydown.Store;

namespace Laydown.Edges.Tests.Store;

public sealed class SqliteShopStoreLawTests : IDisposable
{
    private static readonly CancellationToken None = CancellationToken.None;
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task An_order_comes_back_with_every_field_of_its_items()
    {
        OrderRecord saved = Samples.OrderRecord("TW-9001", Samples.ItemRecord("TW-9001-2", ItemState.Ready), Samples.ItemRecord("TW-9001-1", ItemState.Stopped));
        SqliteShopStore store = await OpenAsync();
        await store.SaveOrderAsync(saved, None);

        OrderRecord back = Assert.Single(await (await OpenAsync()).OrdersAsync(None));
        Assert.Equivalent(saved, back, strict: true);
        Assert.Equal(["TW-9001-2", "TW-9001-1"], back.Items.Select(i => i.Item.Id));
        Assert.Equivalent(saved.Items[1], await store.ItemAsync("TW-9001-1", None), strict: true);
        Assert.Null(await store.ItemAsync("TW-9001-3", None));
    }

    [Fact]
    public async Task A_run_comes_back_with_every_field()
    {
        SqliteShopStore store = await OpenAsync();
        RunRecord saved = Samples.RunRecord("R-20261126-01", RunState.Aborted, "TW-9001-1");
        await store.SaveRunsAsync([saved], ItemState.Planned, None);

        Assert.Equivalent(saved, await (await OpenAsync()).RunAsync("R-20261126-01", None), strict: true);
        Assert.Equivalent(saved, Assert.Single(await store.RunsAsync(None)), strict: true);
        Assert.Null(await store.RunAsync("R-20261126-02", None));
    }

    [Fact]
    public async Task A_value_with_its_own_checks_comes_back_as_it_was()
    {
        SqliteShopStore store = await OpenAsync();
        RunRecord saved = Samples.RunRecord("R-20261126-01", RunState.Waiting, "TW-9001-1");
        await store.SaveRunsAsync([saved], ItemState.Planned, None);

        RunRecord back = Assert.Single(await store.RunsAsync(None));
        Assert.Equal(HeadGap.FromMm(7.7), back.Run.SetUp.HeadGap);
        Assert.Equal(new SizeMm(1220, 2440), back.Run.Sheets[0].Sheet);
        Assert.Equal(new RectMm(0, 0, 500, 700), back.Run.Sheets[0].Placements[0].Part);
        Assert.Equal(new Money(1813), back.Run.Cost.Price);
    }

    [Fact]
    public async Task An_order_saved_again_replaces_its_items_and_drops_those_that_went()
    {
        SqliteShopStore store = await OpenAsync();
        await store.SaveOrderAsync(Samples.OrderRecord("TW-9001", Samples.ItemRecord("TW-9001-1", ItemState.Ready), Samples.ItemRecord("TW-9001-2", ItemState.Ready)), None);
        OrderRecord second = Samples.OrderRecord("TW-9001", Samples.ItemRecord("TW-9001-3", ItemState.Ready), Samples.ItemRecord("TW-9001-2", ItemState.Stopped));
        await store.SaveOrderAsync(second, None);

        Assert.Equivalent(second, Assert.Single(await store.OrdersAsync(None)), strict: true);
    }

    [Fact]
    public async Task A_refused_order_is_kept_until_it_is_saved_without_faults()
    {
        SqliteShopStore store = await OpenAsync();
        InputFault fault = new("order.json", null, "/items/0/quantity", "-3", "at least 1");
        await store.SaveRefusedOrderAsync("TW-9002/order.json", [fault], None);

        RefusedOrder kept = Assert.Single(await store.RefusedOrdersAsync(None));
        Assert.Equal(("TW-9002/order.json", fault), (kept.FileName, Assert.Single(kept.Faults)));
        await store.SaveRefusedOrderAsync("TW-9002/order.json", [], None);
        Assert.Empty(await store.RefusedOrdersAsync(None));
    }

    [Theory]
    [InlineData(ItemState.Planned, "R-20261126-01")]
    [InlineData(ItemState.Completed, "R-20261126-01")]
    [InlineData(ItemState.Ready, null)]
    public async Task Saving_a_run_moves_its_items_with_it(ItemState become, string? runId)
    {
        SqliteShopStore store = await OpenAsync();
        await store.SaveOrderAsync(
            Samples.OrderRecord(
                "TW-9001",
                Samples.ItemRecord("TW-9001-1", ItemState.Ready),
                Samples.ItemRecord("TW-9001-2", ItemState.Stopped),
                Samples.ItemRecord("TW-9001-3", ItemState.Planned, runId: "R-20261126-07"),
                Samples.ItemRecord("TW-9001-4", ItemState.Ready)),
            None);
        await store.SaveRunsAsync([Samples.RunRecord("R-20261126-01", RunState.Waiting, "TW-9001-1", "TW-9001-2", "TW-9001-3")], become, None);

        IReadOnlyList<ItemRecord> items = Assert.Single(await store.OrdersAsync(None)).Items;
        Assert.Equal(
            [(become, runId), (ItemState.Stopped, null), (ItemState.Planned, "R-20261126-07"), (ItemState.Ready, null)],
            items.Select(i => (i.State, i.RunId)));
    }

    [Fact]
    public async Task A_save_that_is_cancelled_or_fails_leaves_nothing()
    {
        SqliteShopStore store = await OpenAsync();
        await store.SaveOrderAsync(Samples.OrderRecord("TW-9001", Samples.ItemRecord("TW-9001-1", ItemState.Ready)), None);

        using CancellationTokenSource gone = new();
        await gone.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            store.SaveItemsAsync([Samples.ItemRecord("TW-9001-1", ItemState.Completed)], gone.Token));

        // The second item belongs to an order that does not exist, so the first must not be saved either.
        await Assert.ThrowsAnyAsync<Exception>(() => store.SaveItemsAsync(
            [Samples.ItemRecord("TW-9001-1", ItemState.Completed), Samples.ItemRecord("TW-9999-1", ItemState.Ready, "TW-9999")], None));
        Assert.Equal(ItemState.Ready, (await store.ItemAsync("TW-9001-1", None))?.State);
    }

    [Fact]
    public async Task A_lock_row_left_by_a_killed_migration_does_not_stop_the_next_start()
    {
        await using (Microsoft.Data.Sqlite.SqliteConnection left = new(Invariant($"Data Source={StorePath}")))
        {
            await left.OpenAsync();
            await using var command = left.CreateCommand();
            command.CommandText = "CREATE TABLE __EFMigrationsLock (Id INTEGER NOT NULL PRIMARY KEY, Timestamp TEXT NOT NULL); INSERT INTO __EFMigrationsLock VALUES (1, '2026-11-25');";
            await command.ExecuteNonQueryAsync();
        }

        SqliteShopStore store = await OpenAsync();
        Assert.Empty(await store.OrdersAsync(None));
    }

    [Fact]
    public async Task A_reader_sees_whole_saves_only_while_another_writes()
    {
        SqliteShopStore writer = await OpenAsync();
        SqliteShopStore reader = await OpenAsync();
        await writer.SaveOrderAsync(StoreWriter.Order(0), None);
        Task writing = Task.Run(async () =>
        {
            for (int round = 1; round <= 60; round++)
                await writer.SaveOrderAsync(StoreWriter.Order(round), None);
        });

        int looks = 0;
        int seen = 0;
        while (!writing.IsCompleted || looks < 5)
        {
            IReadOnlyList<ItemRecord> items = Assert.Single(await reader.OrdersAsync(None)).Items;
            Assert.Equal(StoreWriter.Items, items.Count);
            int round = int.Parse(Assert.Single(items.Select(i => i.Customer).Distinct()), System.Globalization.CultureInfo.InvariantCulture);
            Assert.True(round >= seen, "A reader must not go back in time.");
            seen = round;
            looks++;
        }

        await writing;
    }

    private string StorePath => Path.Combine(folder.Path, "shop.db");

    private async Task<SqliteShopStore> OpenAsync()
    {
        SqliteShopStore store = new(StorePath);
        await store.OpenAsync(None);
        return store;
    }
}
