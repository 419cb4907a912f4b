using System.Collections.Concurrent;
using Laydown.Measures;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Web.Tests.Sample;

/// <summary>A shop's state kept in memory, with the rules of <see cref="IShopStore"/>.</summary>
internal sealed class MemoryStore : IShopStore
{
    private readonly Lock gate = new();
    private readonly SortedDictionary<string, OrderRecord> orders = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, RunRecord> runs = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, RefusedOrder> refused = new(StringComparer.Ordinal);

    public Task OpenAsync(CancellationToken cancellation) => Task.CompletedTask;

    public Task SaveOrderAsync(OrderRecord order, CancellationToken cancellation)
    {
        lock (gate)
            orders[order.Order.Id] = order;
        return Task.CompletedTask;
    }

    public Task SaveRefusedOrderAsync(string fileName, IReadOnlyList<InputFault> faults, CancellationToken cancellation)
    {
        if (faults.Count == 0)
            refused.TryRemove(fileName, out _);
        else
            refused[fileName] = new(fileName, faults);
        return Task.CompletedTask;
    }

    public Task SaveItemsAsync(IReadOnlyList<ItemRecord> items, CancellationToken cancellation)
    {
        lock (gate)
        {
            foreach (ItemRecord item in items)
                Replace(item);
        }

        return Task.CompletedTask;
    }

    public Task SaveRunsAsync(IReadOnlyList<RunRecord> saved, ItemState itemsBecome, CancellationToken cancellation)
    {
        lock (gate)
        {
            foreach (RunRecord run in saved)
            {
                runs[run.Run.Id] = run;
                foreach (ItemRecord item in orders.Values.SelectMany(o => o.Items).Where(i => Moves(i, run)).ToList())
                    Replace(item with { State = itemsBecome, RunId = itemsBecome == ItemState.Ready ? null : run.Run.Id });
            }
        }

        return Task.CompletedTask;
    }

    public async Task ReplaceRunAsync(RunRecord run, IReadOnlyList<ItemRecord> items, CancellationToken cancellation)
    {
        await SaveItemsAsync(items, cancellation);
        await SaveRunsAsync([run], ItemState.Planned, cancellation);
    }

    public Task<IReadOnlyList<OrderRecord>> OrdersAsync(CancellationToken cancellation)
    {
        lock (gate)
            return Task.FromResult<IReadOnlyList<OrderRecord>>([.. orders.Values]);
    }

    public Task<IReadOnlyList<RefusedOrder>> RefusedOrdersAsync(CancellationToken cancellation) =>
        Task.FromResult<IReadOnlyList<RefusedOrder>>([.. refused.Values]);

    public Task<ItemRecord?> ItemAsync(string itemId, CancellationToken cancellation)
    {
        lock (gate)
            return Task.FromResult(orders.Values.SelectMany(o => o.Items).FirstOrDefault(i => i.Item.Id == itemId));
    }

    public Task<IReadOnlyList<RunRecord>> RunsAsync(CancellationToken cancellation)
    {
        lock (gate)
            return Task.FromResult<IReadOnlyList<RunRecord>>([.. runs.Values]);
    }

    public Task<RunRecord?> RunAsync(string runId, CancellationToken cancellation)
    {
        lock (gate)
            return Task.FromResult(runs.GetValueOrDefault(runId));
    }

    private static bool Moves(ItemRecord item, RunRecord run) =>
        run.Run.Items.Any(r => r.ItemId == item.Item.Id)
        && item.State is not (ItemState.Waiting or ItemState.Stopped)
        && (item.RunId is null || item.RunId == run.Run.Id);

    private void Replace(ItemRecord item)
    {
        OrderRecord order = orders[item.OrderId];
        orders[item.OrderId] = order with { Items = [.. order.Items.Select(i => i.Item.Id == item.Item.Id ? item : i)] };
    }
}
