using System.Security.Cryptography;
using System.Text.Json;
using Laydown.Measures;
using Laydown.Plan.Orders;

namespace Laydown.Shop.Orders;

/// <summary>Takes orders in: reads every <c>orders/*/order.json</c>, keeps those it can take and remembers why it refused the others.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="catalogue">What the shop has.</param>
/// <param name="reader">Reads order files.</param>
/// <param name="store">Keeps them.</param>
/// <param name="clock">Tells which day it is.</param>
public sealed class TakeOrders(ShopFolder folder, Catalogue catalogue, IOrderReader reader, IShopStore store, TimeProvider clock)
{
    private const long MostOrderBytes = 4 << 20;

    /// <summary>
    /// Takes in what lies in the orders' folder. An order that did not change keeps the state of its items; an item that changed, or whose
    /// artwork changed, starts again. One bad order or line holds up no other.
    /// </summary>
    public async Task<TakenOrders> TakeAsync(CancellationToken cancellation)
    {
        Known known = new([], [], (await store.OrdersAsync(cancellation)).ToDictionary(o => o.Order.Id, StringComparer.Ordinal));
        List<OrderRecord> taken = [];
        List<RefusedOrder> refused = [];
        int unchanged = 0;
        foreach (string orderFolder in OrderFolders())
        {
            cancellation.ThrowIfCancellationRequested();
            string file = Invariant($"{Path.GetFileName(orderFolder)}/{ItemRules.OrderFile}");
            Reading<Order> reading = Read(orderFolder, known);
            List<InputFault> faults = [.. reading.Faults];
            if (reading.IsTaken)
            {
                OrderRecord record = await RecordAsync(reading.Value, orderFolder, known, faults, cancellation);
                unchanged += await SaveIfChangedAsync(record, known, cancellation) ? 0 : 1;
                taken.Add(record);
            }

            // No faults takes an order that has been mended off the list of refused ones.
            await store.SaveRefusedOrderAsync(file, faults, cancellation);
            if (faults.Count > 0)
                refused.Add(new(file, faults));
        }

        return new([.. taken.OrderBy(o => o.Order.Id, StringComparer.Ordinal)], refused, unchanged);
    }

    private IEnumerable<string> OrderFolders() => !Directory.Exists(folder.Orders)
        ? []
        : Directory.EnumerateDirectories(folder.Orders)
            .Where(d => new DirectoryInfo(d).LinkTarget is null && !Path.GetFileName(d).StartsWith('.'))
            .Order(StringComparer.Ordinal);

    private Reading<Order> Read(string orderFolder, Known known)
    {
        FileInfo file = new(Path.Combine(orderFolder, ItemRules.OrderFile));
        if (!file.Exists || file.LinkTarget is not null)
            return Refused("file", file.Exists ? "a link" : "no such file", "a file order.json in the order's folder");
        if (file.Length > MostOrderBytes)
            return Refused("file", Invariant($"{file.Length} bytes"), Invariant($"at most {MostOrderBytes} bytes"));

        return reader.Read(file.FullName).Then(order => known.OrderIds.Add(order.Id)
            ? Reading.Of(order)
            : Refused("/id", Invariant($"'{order.Id}', which another order has"), "a number of its own"));
    }

    private async Task<OrderRecord> RecordAsync(
        Order order, string orderFolder, Known known, List<InputFault> faults, CancellationToken cancellation)
    {
        DateOnly today = DateOnly.FromDateTime(clock.GetLocalNow().Date);
        List<ItemRecord> items = [];
        for (int i = 0; i < order.Items.Count; i++)
        {
            Item item = order.Items[i];
            if (!known.ItemIds.Add(item.Id))
            {
                faults.Add(new(ItemRules.OrderFile, null, Invariant($"/items/{i}/id"), Invariant($"'{item.Id}' twice"), "an id of its own"));
                continue;
            }

            ItemRecord fresh = Fresh(item, i, order, orderFolder, today);
            items.Add(await KeptOrFreshAsync(fresh, known, cancellation));
        }

        return new(order, items);
    }

    private ItemRecord Fresh(Item item, int index, Order order, string orderFolder, DateOnly today)
    {
        Reading<string> place = ArtworkPlace.Find(orderFolder, item.Artwork, index);
        IReadOnlyList<InputFault> back = item.BackArtwork is { } name ? ArtworkPlace.Find(orderFolder, name, index, "backArtwork").Faults : [];
        List<InputFault> faults = [.. ItemRules.Faults(item, index, catalogue, today), .. place.Faults, .. back];
        ItemState state = faults.Count == 0 ? ItemState.Waiting : ItemState.Stopped;
        return new(item, order.Id, order.Customer, state, place.Match(p => p, _ => ""), null, faults, [], null, null);
    }

    /// <summary>The record as stored when neither line nor artwork changed, so that nothing is done twice; else the fresh one.</summary>
    private static async Task<ItemRecord> KeptOrFreshAsync(ItemRecord fresh, Known known, CancellationToken cancellation)
    {
        ItemRecord? old = known.Stored.GetValueOrDefault(fresh.OrderId)?.Items
            .FirstOrDefault(i => string.Equals(i.Item.Id, fresh.Item.Id, StringComparison.Ordinal));
        if (old is null || !Same(old.Item, fresh.Item) || !string.Equals(old.ArtworkPath, fresh.ArtworkPath, StringComparison.Ordinal))
            return fresh;
        if (!Same(old.Faults.Where(IsOfLine), fresh.Faults) && old.RunId is null)
            return fresh;
        // What could not be read stays held, with its reason; the check looks at it again in any case.
        if (old.Artwork is null || fresh.ArtworkPath.Length == 0)
            return old;

        // The dearest test comes last.
        string sha256 = await HashAsync(fresh.ArtworkPath, cancellation);
        if (fresh.BackPath is { } back)
        {
            if (!File.Exists(back))
                return fresh;
            sha256 = JoinedArtwork.Sha256(sha256, await HashAsync(back, cancellation));
        }

        return string.Equals(sha256, old.Artwork.Sha256, StringComparison.OrdinalIgnoreCase) ? old : fresh;
    }

    private static async Task<string> HashAsync(string path, CancellationToken cancellation)
    {
        await using FileStream stream = File.OpenRead(path);
        return Convert.ToHexStringLower(await SHA256.HashDataAsync(stream, cancellation));
    }

    private static bool IsOfLine(InputFault fault) => string.Equals(fault.File, ItemRules.OrderFile, StringComparison.Ordinal);

    private async Task<bool> SaveIfChangedAsync(OrderRecord record, Known known, CancellationToken cancellation)
    {
        if (known.Stored.TryGetValue(record.Order.Id, out OrderRecord? old) && Same(old, record))
            return false;
        await store.SaveOrderAsync(record, cancellation);
        return true;
    }

    // Records hold lists, which compare by reference; their JSON compares by content.
    private static bool Same<T>(T one, T other) => string.Equals(
        JsonSerializer.Serialize(one, ShopJson.Compact), JsonSerializer.Serialize(other, ShopJson.Compact), StringComparison.Ordinal);

    private static Reading<Order> Refused(string field, string found, string wanted) =>
        Reading.Refused<Order>(new InputFault(ItemRules.OrderFile, null, field, found, wanted));

    private sealed record Known(HashSet<string> OrderIds, HashSet<string> ItemIds, Dictionary<string, OrderRecord> Stored);
}
