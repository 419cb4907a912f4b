using Laydown.Measures;
using Laydown.Shop.Run;

namespace Laydown.Shop.Orders;

/// <summary>The whole state of the shop. Every method is one transaction: done or not done, also after a kill at any time.</summary>
public interface IShopStore
{
    /// <summary>Creates or brings up to date the tables.</summary>
    Task OpenAsync(CancellationToken cancellation);

    /// <summary>Puts orders in, with their items, replacing those of the same id.</summary>
    Task SaveOrderAsync(OrderRecord order, CancellationToken cancellation);

    /// <summary>Keeps an order file that was refused, so that nothing is lost; no faults take it off the list again.</summary>
    Task SaveRefusedOrderAsync(string fileName, IReadOnlyList<InputFault> faults, CancellationToken cancellation);

    /// <summary>Replaces items.</summary>
    Task SaveItemsAsync(IReadOnlyList<ItemRecord> items, CancellationToken cancellation);

    /// <summary>
    /// Puts runs in, or replaces those of the same id, and moves their items to the given state, all at once.
    /// Items that wait or are stopped, or are in another run, stay; <see cref="ItemState.Ready"/> takes items out of the run.
    /// </summary>
    Task SaveRunsAsync(IReadOnlyList<RunRecord> runs, ItemState itemsBecome, CancellationToken cancellation);

    /// <summary>Puts a run in the place of the one of its id, and items as they are with it; the run's items are planned.</summary>
    Task ReplaceRunAsync(RunRecord run, IReadOnlyList<ItemRecord> items, CancellationToken cancellation);

    /// <summary>All orders, by id.</summary>
    Task<IReadOnlyList<OrderRecord>> OrdersAsync(CancellationToken cancellation);

    /// <summary>Order files that were refused, with their faults.</summary>
    Task<IReadOnlyList<RefusedOrder>> RefusedOrdersAsync(CancellationToken cancellation);

    /// <summary>One item, or null.</summary>
    Task<ItemRecord?> ItemAsync(string itemId, CancellationToken cancellation);

    /// <summary>All runs, by id.</summary>
    Task<IReadOnlyList<RunRecord>> RunsAsync(CancellationToken cancellation);

    /// <summary>One run, or null.</summary>
    Task<RunRecord?> RunAsync(string runId, CancellationToken cancellation);
}
