using Laydown.Measures;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Layers;

/// <summary>Chooses the look an item is printed from.</summary>
/// <param name="store">Items.</param>
/// <param name="shelf">The looks.</param>
public sealed class ChooseLook(IShopStore store, LookShelf shelf)
{
    /// <summary>The item prints from this look from now on; null separates its pages again. A run it is in is planned anew.</summary>
    /// <param name="itemId">The item.</param>
    /// <param name="lookId">One of its looks, or null.</param>
    /// <param name="cancellation">Stops before saving.</param>
    /// <returns>The item as it is now, or why the look cannot be printed.</returns>
    public async Task<Reading<ItemRecord>> ChooseAsync(string itemId, string? lookId, CancellationToken cancellation)
    {
        ItemRecord? item = await store.ItemAsync(itemId, cancellation);
        if (item is null)
            return Refused(itemId, "item", Invariant($"no item '{itemId}'"), "an item of this shop");
        if (lookId is not null)
        {
            Reading<LookRecord> look = shelf.Find(itemId, lookId).Then(l => LookMatch.Of(item, l));
            if (!look.IsTaken)
                return Reading.Refused<ItemRecord>(look.Faults);
        }

        if (string.Equals(item.LookId, lookId, StringComparison.Ordinal))
            return Reading.Of(item);

        // Ink and files of a run rest on what it prints from: an item that prints from something else leaves its run.
        bool planned = item.State is ItemState.Planned or ItemState.Completed;
        ItemRecord chosen = item with { LookId = lookId, State = planned ? ItemState.Ready : item.State, RunId = planned ? null : item.RunId };
        await store.SaveItemsAsync([chosen], cancellation);
        return Reading.Of(chosen);
    }

    private static Reading<ItemRecord> Refused(string itemId, string field, string found, string wanted) =>
        Reading.Refused<ItemRecord>(new InputFault(Invariant($"item {itemId}"), null, field, found, wanted));
}
