using Laydown.Artwork.Pages;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Press.Stacks;

namespace Laydown.Shop.Orders;

/// <summary>An item with all that is known of it.</summary>
/// <param name="Item">As ordered.</param>
/// <param name="OrderId">Its order.</param>
/// <param name="Customer">Who ordered.</param>
/// <param name="State">How far it is.</param>
/// <param name="ArtworkPath">Full path of its artwork; made by the shop, never taken from a file.</param>
/// <param name="Artwork">The file as measured, or null where it could not be read.</param>
/// <param name="Faults">Why the file or the order line was refused.</param>
/// <param name="Findings">Results of the checks.</param>
/// <param name="Stack">Its layers, or null before build.</param>
/// <param name="RunId">Its run, or null.</param>
/// <param name="LookId">The look it is printed from, or null where its pages are separated.</param>
public sealed record ItemRecord(
    Item Item,
    string OrderId,
    string Customer,
    ItemState State,
    string ArtworkPath,
    ArtworkFile? Artwork,
    IReadOnlyList<InputFault> Faults,
    IReadOnlyList<Finding> Findings,
    LayerStack? Stack,
    string? RunId,
    string? LookId = null)
{
    /// <summary>Full path of the back's own file, beside the artwork; null where all pages are in one file.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public string? BackPath => Item.BackArtwork is { } back && ArtworkPath.Length > 0 ? Path.Combine(Path.GetDirectoryName(ArtworkPath) ?? "", Path.GetFileName(back)) : null;

    /// <summary>The file that holds a page of the item, and its number there: the back's own file counts as page 2.</summary>
    /// <param name="page">Page of the item from 1.</param>
    public (string Path, int Page) FileOf(int page) => BackPath is { } back && page >= 2 ? page == 2 ? (back, 1) : (ArtworkPath, page - 1) : (ArtworkPath, page);
}
