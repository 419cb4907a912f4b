using System.Text.Json;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Shop;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;
using Laydown.Store.Rows;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Laydown.Store;

/// <summary>The state of the shop in one SQLite file. Readers and one writer work side by side, also from several processes.</summary>
/// <remarks>Every save is one transaction, flushed to the disk before it returns; a kill at any time leaves it whole or absent.</remarks>
public sealed class SqliteShopStore : IShopStore
{
    private readonly string dbPath;
    private readonly DbContextOptions<ShopContext> options;

    /// <summary>A store in the file at <paramref name="dbPath"/>, which need not exist yet.</summary>
    /// <exception cref="ArgumentException">The path is empty.</exception>
    public SqliteShopStore(string dbPath)
    {
        this.dbPath = Path.GetFullPath(Bounds.Named(dbPath));
        options = Options(this.dbPath);
    }

    /// <summary>How a file is opened, by every store in it.</summary>
    internal static DbContextOptions<ShopContext> Options(string dbPath) => new DbContextOptionsBuilder<ShopContext>()
        .UseSqlite(new SqliteConnectionStringBuilder { DataSource = dbPath, DefaultTimeout = 60 }.ToString())
        .AddInterceptors(new SafeWrites())
        .Options;

    /// <inheritdoc/>
    public async Task OpenAsync(CancellationToken cancellation)
    {
        string folder = Path.GetDirectoryName(dbPath) ?? throw new InvalidOperationException("A full path has a folder.");
        Directory.CreateDirectory(folder);

        // Our own lock file goes with the process that holds it; the lock row that migrations leave in the data base does not,
        // and would stop every later start after a kill. So whoever holds the file may remove the row.
        await using FileStream alone = await LockAsync(Path.Combine(folder, "shop.lock"), cancellation);
        await using ShopContext context = new(options);
        await context.Database.OpenConnectionAsync(cancellation);
        await context.Database.ExecuteSqlRawAsync("PRAGMA journal_mode=WAL", cancellation);
        if (!(await context.Database.GetPendingMigrationsAsync(cancellation)).Any())
            return;
        await DropLeftLockAsync(context, cancellation);
        await context.Database.MigrateAsync(cancellation);
    }

    /// <inheritdoc/>
    public Task SaveOrderAsync(OrderRecord order, CancellationToken cancellation) => WriteAsync(
        async context =>
        {
            OrderRow? row = await context.Orders.FindAsync([order.Order.Id], cancellation);
            string json = Json(order.Order);
            if (row is null)
                context.Orders.Add(new() { Id = order.Order.Id, Received = order.Order.Received, Json = json });
            else
                (row.Received, row.Json) = (order.Order.Received, json);

            // Lines that are no longer in the order go with it.
            HashSet<string> kept = [.. order.Items.Select(i => i.Item.Id)];
            List<ItemRow> old = await context.Items.Where(i => i.OrderId == order.Order.Id).ToListAsync(cancellation);
            context.Items.RemoveRange(old.Where(i => !kept.Contains(i.Id)));
            for (int i = 0; i < order.Items.Count; i++)
                await PutItemAsync(context, order.Items[i], i, cancellation);
        },
        cancellation);

    /// <inheritdoc/>
    public Task SaveRefusedOrderAsync(string fileName, IReadOnlyList<InputFault> faults, CancellationToken cancellation) => WriteAsync(
        async context =>
        {
            RefusedOrderRow? row = await context.RefusedOrders.FindAsync([fileName], cancellation);
            if (faults.Count == 0 && row is not null)
                context.RefusedOrders.Remove(row);
            else if (faults.Count > 0 && row is null)
                context.RefusedOrders.Add(new() { FileName = fileName, Json = Json(faults) });
            else if (row is not null)
                row.Json = Json(faults);
        },
        cancellation);

    /// <inheritdoc/>
    public Task SaveItemsAsync(IReadOnlyList<ItemRecord> items, CancellationToken cancellation) => WriteAsync(
        async context =>
        {
            foreach (ItemRecord item in items)
                await PutItemAsync(context, item, null, cancellation);
        },
        cancellation);

    /// <inheritdoc/>
    public Task SaveRunsAsync(IReadOnlyList<RunRecord> runs, ItemState itemsBecome, CancellationToken cancellation) => WriteAsync(
        async context =>
        {
            foreach (RunRecord run in runs)
            {
                await PutRunAsync(context, run, cancellation);
                await MoveItemsAsync(context, run.Run, itemsBecome, cancellation);
            }
        },
        cancellation);

    /// <inheritdoc/>
    public Task ReplaceRunAsync(RunRecord run, IReadOnlyList<ItemRecord> items, CancellationToken cancellation) => WriteAsync(
        async context =>
        {
            foreach (ItemRecord item in items)
                await PutItemAsync(context, item, null, cancellation);
            await PutRunAsync(context, run, cancellation);
            await MoveItemsAsync(context, run.Run, ItemState.Planned, cancellation);
        },
        cancellation);

    /// <inheritdoc/>
    public async Task<IReadOnlyList<OrderRecord>> OrdersAsync(CancellationToken cancellation)
    {
        // One transaction, so that orders and items are of the same moment; deferred, so that it keeps no writer out.
        await using ShopContext context = new(options);
        await context.Database.OpenConnectionAsync(cancellation);
        await using SqliteTransaction moment = ((SqliteConnection)context.Database.GetDbConnection()).BeginTransaction(deferred: true);
        await context.Database.UseTransactionAsync(moment, cancellation);
        List<OrderRow> orders = await context.Orders.AsNoTracking().OrderBy(o => o.Id).ToListAsync(cancellation);
        List<ItemRow> items = await context.Items.AsNoTracking().OrderBy(i => i.Position).ToListAsync(cancellation);
        ILookup<string, ItemRow> byOrder = items.ToLookup(i => i.OrderId, StringComparer.Ordinal);
        return [.. orders.Select(o => new OrderRecord(From<Order>(o.Json), [.. byOrder[o.Id].Select(i => From<ItemRecord>(i.Json))]))];
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<RefusedOrder>> RefusedOrdersAsync(CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        List<RefusedOrderRow> rows = await context.RefusedOrders.AsNoTracking().OrderBy(r => r.FileName).ToListAsync(cancellation);
        return [.. rows.Select(r => new RefusedOrder(r.FileName, From<List<InputFault>>(r.Json)))];
    }

    /// <inheritdoc/>
    public async Task<ItemRecord?> ItemAsync(string itemId, CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        ItemRow? row = await context.Items.AsNoTracking().FirstOrDefaultAsync(i => i.Id == itemId, cancellation);
        return row is null ? null : From<ItemRecord>(row.Json);
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<RunRecord>> RunsAsync(CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        List<RunRow> rows = await context.Runs.AsNoTracking().OrderBy(r => r.Id).ToListAsync(cancellation);
        return [.. rows.Select(r => From<RunRecord>(r.Json))];
    }

    /// <inheritdoc/>
    public async Task<RunRecord?> RunAsync(string runId, CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        RunRow? row = await context.Runs.AsNoTracking().FirstOrDefaultAsync(r => r.Id == runId, cancellation);
        return row is null ? null : From<RunRecord>(row.Json);
    }

    /// <summary>Reads and changes rows in one transaction that locks out other writers from its start.</summary>
    private async Task WriteAsync(Func<ShopContext, Task> change, CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        await change(context);
        await context.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
    }

    private static async Task PutItemAsync(ShopContext context, ItemRecord item, int? position, CancellationToken cancellation)
    {
        ItemRow? row = await context.Items.FindAsync([item.Item.Id], cancellation);
        if (row is null)
        {
            row = new()
            {
                Id = item.Item.Id,
                OrderId = item.OrderId,
                Position = position ?? int.MaxValue,
                State = "",
                Json = "",
            };
            context.Items.Add(row);
        }

        row.OrderId = item.OrderId;
        row.Position = position ?? row.Position;
        row.State = Invariant($"{item.State}");
        row.RunId = item.RunId;
        row.Json = Json(item);
    }

    private static async Task PutRunAsync(ShopContext context, RunRecord run, CancellationToken cancellation)
    {
        RunRow? row = await context.Runs.FindAsync([run.Run.Id], cancellation);
        if (row is null)
            context.Runs.Add(row = new() { Id = run.Run.Id, State = "", Due = run.Run.Due, Json = "" });
        row.State = Invariant($"{run.State}");
        row.Due = run.Run.Due;
        row.Json = Json(run);
    }

    private static async Task MoveItemsAsync(ShopContext context, Plan.Runs.Run run, ItemState become, CancellationToken cancellation)
    {
        foreach (string id in run.Items.Select(i => i.ItemId).Distinct(StringComparer.Ordinal))
        {
            ItemRow? row = await context.Items.FindAsync([id], cancellation);
            if (row is null || From<ItemRecord>(row.Json) is not { State: not (ItemState.Waiting or ItemState.Stopped) } item)
                continue;
            if (item.RunId is not null && !string.Equals(item.RunId, run.Id, StringComparison.Ordinal))
                continue;
            await PutItemAsync(context, item with { State = become, RunId = become == ItemState.Ready ? null : run.Id }, null, cancellation);
        }
    }

    private static async Task<FileStream> LockAsync(string path, CancellationToken cancellation)
    {
        while (true)
        {
            try
            {
                return new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException) when (File.Exists(path))
            {
                await Task.Delay(50, cancellation);
            }
        }
    }

    private static async Task DropLeftLockAsync(ShopContext context, CancellationToken cancellation)
    {
        List<int> tables = await context.Database
            .SqlQueryRaw<int>("SELECT count(*) AS Value FROM sqlite_master WHERE name = '__EFMigrationsLock'").ToListAsync(cancellation);
        if (tables[0] > 0)
            await context.Database.ExecuteSqlRawAsync("DELETE FROM __EFMigrationsLock", cancellation);
    }

    private static string Json<T>(T value) => JsonSerializer.Serialize(value, ShopJson.Compact);

    private static T From<T>(string json) =>
        JsonSerializer.Deserialize<T>(json, ShopJson.Compact) ?? throw new InvalidDataException("The store: found null; wanted a record.");
}
