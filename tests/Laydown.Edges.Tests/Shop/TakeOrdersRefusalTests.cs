using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Shop.Orders;

namespace Laydown.Edges.Tests.UseCases;

public sealed class TakeOrdersRefusalTests : IDisposable
{
    private readonly ShopBench shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task A_broken_order_is_remembered_with_its_faults_and_the_others_are_taken()
    {
        shop.Put("TW-1", Samples.Order("TW-1", ShopBench.Item("TW-1-1")));
        string broken = shop.Put("TW-2", Samples.Order("TW-2", ShopBench.Item("TW-2-1")));
        await File.WriteAllTextAsync(Path.Combine(broken, "order.json"), "{ \"id\": \"TW-2\", ");
        shop.Put("TW-3", Samples.Order("TW-3", ShopBench.Item("TW-3-1")));
        Directory.CreateDirectory(Path.Combine(shop.Folder.Orders, "TW-4"));

        TakenOrders taken = await shop.TakeOrders().TakeAsync(CancellationToken.None);
        Assert.Equal(["TW-1", "TW-3"], taken.Orders.Select(o => o.Order.Id));
        Assert.Equal(["TW-2/order.json", "TW-4/order.json"], (await shop.Store.RefusedOrdersAsync(CancellationToken.None)).Select(r => r.FileName));
        Assert.All(taken.Refused, r => Assert.NotEmpty(r.Faults));
    }

    [Fact]
    public async Task A_mended_order_is_taken_off_the_list_of_refused_ones()
    {
        string folder = shop.Put("TW-1", Samples.Order("TW-1", ShopBench.Item("TW-1-1")));
        string file = Path.Combine(folder, "order.json");
        byte[] good = await File.ReadAllBytesAsync(file);
        await File.WriteAllTextAsync(file, "");
        await shop.TakeOrders().TakeAsync(CancellationToken.None);
        Assert.Single(await shop.Store.RefusedOrdersAsync(CancellationToken.None));

        await File.WriteAllBytesAsync(file, good);
        await shop.TakeOrders().TakeAsync(CancellationToken.None);
        Assert.Empty(await shop.Store.RefusedOrdersAsync(CancellationToken.None));
        Assert.Single(await shop.Store.OrdersAsync(CancellationToken.None));
    }

    [Fact]
    public async Task A_negative_size_names_file_and_path()
    {
        string folder = shop.Put("TW-1", Samples.Order("TW-1", ShopBench.Item("TW-1-1")));
        string file = Path.Combine(folder, "order.json");
        string json = await File.ReadAllTextAsync(file);
        await File.WriteAllTextAsync(file, json.Replace("\"widthMm\": 600", "\"widthMm\": -600", StringComparison.Ordinal));

        TakenOrders taken = await shop.TakeOrders().TakeAsync(CancellationToken.None);
        InputFault fault = Assert.Single(Assert.Single(taken.Refused).Faults);
        Assert.Equal(("order.json", "/items/0/widthMm"), (fault.File, fault.Field));
        Assert.Contains("-600", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_unknown_stock_stops_its_item_alone_and_names_the_stocks_kept()
    {
        ItemRecord[] items = await TakeAsync(ShopBench.Item("TW-1-1", stockId: "unobtainium"), ShopBench.Item("TW-1-2"));
        InputFault fault = Assert.Single(items[0].Faults);
        Assert.Equal((ItemState.Stopped, "/items/0/stockId"), (items[0].State, fault.Field));
        Assert.Contains("fluted-5", fault.Wanted, StringComparison.Ordinal);
        Assert.Equal(ItemState.Waiting, items[1].State);
    }

    [Fact]
    public async Task A_due_date_in_the_past_stops_its_item_and_today_does_not()
    {
        // The order itself came before, so only the shop's own day can tell.
        Order order = Samples.Order(
            "TW-1", ShopBench.Item("TW-1-1") with { Due = ShopBench.Today.AddDays(-1) }, ShopBench.Item("TW-1-2") with { Due = ShopBench.Today }) with
        {
            Received = ShopBench.Today.AddDays(-9),
        };
        shop.Put("TW-1", order);
        ItemRecord[] items = await ItemsAsync();
        Assert.Equal(["/items/0/due"], items[0].Faults.Select(f => f.Field));
        Assert.Empty(items[1].Faults);
    }

    [Theory]
    [InlineData("fluted-5", 4000, 900)]
    [InlineData("fluted-5", 1219, 2440)]
    [InlineData("foam-blank", 500, 640)]
    public async Task A_piece_larger_than_every_sheet_of_its_stock_is_stopped(string stockId, double widthMm, double heightMm)
    {
        ItemRecord[] items = await TakeAsync(ShopBench.Item("TW-1-1", stockId: stockId) with { WidthMm = widthMm, HeightMm = heightMm });
        InputFault fault = Assert.Single(items[0].Faults);
        Assert.Equal("/items/0/widthMm", fault.Field);
        Assert.Contains(stockId, fault.Wanted, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_large_picture_on_a_roll_is_no_fault_because_it_is_printed_in_panels()
    {
        ItemRecord[] items = await TakeAsync(ShopBench.Item("TW-1-1", stockId: "wall-film-roll") with { WidthMm = 6000, HeightMm = 2600 });
        Assert.Empty(items[0].Faults);
    }

    [Theory]
    [InlineData("../TW-2/secret.pdf")]
    [InlineData("/etc/passwd")]
    [InlineData("sub/board.pdf")]
    public async Task A_path_where_a_name_is_wanted_leads_nowhere(string artwork)
    {
        string secret = Directory.CreateDirectory(Path.Combine(shop.Folder.Orders, "TW-2")).FullName;
        await File.WriteAllTextAsync(Path.Combine(secret, "secret.pdf"), "secret");
        shop.Put("TW-1", Samples.Order("TW-1", ShopBench.Item("TW-1-1", artwork)));

        // Whether the reader of orders or the shop stops it, no path to it may come out.
        TakenOrders taken = await shop.TakeOrders().TakeAsync(CancellationToken.None);
        Assert.All(taken.Orders.SelectMany(o => o.Items), i => Assert.Equal((ItemState.Stopped, ""), (i.State, i.ArtworkPath)));
        Assert.NotEmpty(taken.Refused.SelectMany(r => r.Faults).Concat(taken.Orders.SelectMany(o => o.Items).SelectMany(i => i.Faults)));
    }

    [Fact]
    public async Task A_link_out_of_the_folder_is_not_followed()
    {
        string folder = shop.Put("TW-1", Samples.Order("TW-1", ShopBench.Item("TW-1-1")));
        File.Delete(Path.Combine(folder, "board.pdf"));
        File.CreateSymbolicLink(Path.Combine(folder, "board.pdf"), "/etc/hostname");
        ItemRecord[] items = await ItemsAsync();
        Assert.Contains("link", Assert.Single(items[0].Faults).Found, StringComparison.Ordinal);
        Assert.Equal("", items[0].ArtworkPath);
    }

    [Fact]
    public async Task Artwork_that_is_not_there_stops_its_item()
    {
        string folder = shop.Put("TW-1", Samples.Order("TW-1", ShopBench.Item("TW-1-1")));
        File.Delete(Path.Combine(folder, "board.pdf"));
        Assert.Equal("/items/0/artwork", Assert.Single((await ItemsAsync())[0].Faults).Field);
    }

    [Fact]
    public async Task An_order_number_or_item_id_that_comes_twice_is_refused_the_second_time()
    {
        shop.Put("a", Samples.Order("TW-1", ShopBench.Item("TW-1-1")));
        shop.Put("b", Samples.Order("TW-1", ShopBench.Item("TW-1-2")));
        shop.Put("c", Samples.Order("TW-3", ShopBench.Item("TW-1-1"), ShopBench.Item("TW-3-1")));

        TakenOrders taken = await shop.TakeOrders().TakeAsync(CancellationToken.None);
        Assert.Equal(["b/order.json", "c/order.json"], taken.Refused.Select(r => r.FileName));
        Assert.Equal(["/id", "/items/0/id"], taken.Refused.SelectMany(r => r.Faults).Select(f => f.Field));
        Assert.Equal(["TW-1-1", "TW-3-1"], taken.Orders.SelectMany(o => o.Items).Select(i => i.Item.Id));
    }

    private async Task<ItemRecord[]> TakeAsync(params Item[] items)
    {
        shop.Put("TW-1", Samples.Order("TW-1", items));
        return await ItemsAsync();
    }

    private async Task<ItemRecord[]> ItemsAsync()
    {
        await shop.TakeOrders().TakeAsync(CancellationToken.None);
        return [.. (await shop.Store.OrdersAsync(CancellationToken.None)).SelectMany(o => o.Items)];
    }
}
