namespace Laydown.Shop.Layers;

/// <summary>Lists the looks of an item.</summary>
/// <param name="shelf">The looks.</param>
public sealed class ListLooks(LookShelf shelf)
{
    /// <summary>All of them by number; none where there is no such item.</summary>
    public IReadOnlyList<LookRecord> List(string itemId) => shelf.List(itemId);
}
