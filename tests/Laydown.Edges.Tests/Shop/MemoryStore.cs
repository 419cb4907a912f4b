using Laydown.Measures;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>The state of a shop in memory, by the words of the port.</summary>
internal sealed class MemoryStore : IShopStore
{
    private readonly SortedDictionary<string, OrderRecord> orders = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, RunRecord> runs = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, RefusedOrder> refused = new(StringComparer.Ordinal);

    /// <summary>States that runs were saved with, in order.</summary>
    public List<(string Id, RunState State)> RunStates { get; } = [];

    public Task OpenAsync(CancellationToken cancellation) => Task.CompletedTask;

    public Task SaveOrderAsync(OrderRecord order, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        orders[order.Order.Id] = order;
        return Task.CompletedTask;
    }

    public Task SaveRefusedOrderAsync(string fileName, IReadOnlyList<InputFault> faults, CancellationToken cancellation)
    {
        if (faults.Count == 0)
            refused.Remove(fileName);
        else
            refused[fileName] = new(fileName, faults);
        return Task.CompletedTask;
    }

    public Task SaveItemsAsync(IReadOnlyList<ItemRecord> items, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        foreach (ItemRecord item in items)
            orders[item.OrderId] = orders[item.OrderId] with { Items = [.. orders[item.OrderId].Items.Select(i => i.Item.Id == item.Item.Id ? item : i)] };
        return Task.CompletedTask;
    }

    public Task SaveRunsAsync(IReadOnlyList<RunRecord> saved, ItemState itemsBecome, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        foreach (RunRecord run in saved)
        {
            runs[run.Run.Id] = run;
            RunStates.Add((run.Run.Id, run.State));
            HashSet<string> members = [.. run.Run.Items.Select(i => i.ItemId)];
            List<ItemRecord> moved = [.. orders.Values.SelectMany(o => o.Items)
                .Where(i => members.Contains(i.Item.Id) && i.State is not (ItemState.Waiting or ItemState.Stopped) && (i.RunId ?? run.Run.Id) == run.Run.Id)
                .Select(i => i with { State = itemsBecome, RunId = itemsBecome == ItemState.Ready ? null : run.Run.Id })];
            SaveItemsAsync(moved, cancellation);
        }

        return Task.CompletedTask;
    }

    public async Task ReplaceRunAsync(RunRecord run, IReadOnlyList<ItemRecord> items, CancellationToken cancellation)
    {
        await SaveItemsAsync(items, cancellation);
        await SaveRunsAsync([run], ItemState.Planned, cancellation);
    }

    public Task<IReadOnlyList<OrderRecord>> OrdersAsync(CancellationToken cancellation) => Task.FromResult<IReadOnlyList<OrderRecord>>([.. orders.Values]);

    public Task<IReadOnlyList<RefusedOrder>> RefusedOrdersAsync(CancellationToken cancellation) => Task.FromResult<IReadOnlyList<RefusedOrder>>([.. refused.Values]);

    public Task<ItemRecord?> ItemAsync(string itemId, CancellationToken cancellation) =>
        Task.FromResult(orders.Values.SelectMany(o => o.Items).FirstOrDefault(i => i.Item.Id == itemId));

    public Task<IReadOnlyList<RunRecord>> RunsAsync(CancellationToken cancellation) => Task.FromResult<IReadOnlyList<RunRecord>>([.. runs.Values]);

    public Task<RunRecord?> RunAsync(string runId, CancellationToken cancellation) => Task.FromResult(runs.GetValueOrDefault(runId));
}
