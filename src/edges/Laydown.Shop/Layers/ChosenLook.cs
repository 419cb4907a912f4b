using Laydown.Measures;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Layers;

/// <summary>Fetches the look an item is printed from: never another, never none in its place.</summary>
public static class ChosenLook
{
    /// <summary>The look, or why it cannot be printed: it is gone, cannot be read, or the item has become another since.</summary>
    /// <param name="item">An item that names a look.</param>
    /// <param name="shelf">Looks of the shop, or null where there are none.</param>
    /// <exception cref="ArgumentException">The item names no look.</exception>
    public static Reading<StoredLook> Of(ItemRecord item, LookShelf? shelf)
    {
        string id = item.LookId ?? throw new ArgumentException(Invariant($"Item {item.Item.Id}: wanted one that names a look."), nameof(item));
        return shelf is null
            ? Reading.Refused<StoredLook>(new InputFault(Invariant($"look {id}"), null, "look", Invariant($"no looks here for {item.Item.Id}"), "the shop that holds it"))
            : shelf.Find(item.Item.Id, id).Then(look => LookMatch.Of(item, look)).Then(look => Reading.Of(new StoredLook(look, shelf.FolderOf(item.Item.Id, id))));
    }
}
