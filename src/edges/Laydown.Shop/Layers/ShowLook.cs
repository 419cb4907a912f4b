using Laydown.Measures;

namespace Laydown.Shop.Layers;

/// <summary>Shows one look.</summary>
/// <param name="shelf">The looks.</param>
public sealed class ShowLook(LookShelf shelf)
{
    /// <summary>The look with the full path of its folder, or why there is none.</summary>
    public Reading<StoredLook> Show(string itemId, string lookId) =>
        shelf.Find(itemId, lookId).Then(record => Reading.Of(new StoredLook(record, shelf.FolderOf(itemId, lookId))));
}
