using Laydown.Layout.Marks;
using Laydown.Layout.Panels;
using Laydown.Layout.Repeats;
using Laydown.Measures;

namespace Laydown.Plan.Orders;

/// <summary>One artwork × size × quantity × material × build × finishing × due date.</summary>
/// <param name="Id">Unique in the shop, such as <c>TW-1041-1</c>.</param>
/// <param name="Title">What it is, for people.</param>
/// <param name="Artwork">File name in the order's folder, without a path.</param>
/// <param name="WidthMm">Finished width, mm.</param>
/// <param name="HeightMm">Finished height, mm.</param>
/// <param name="BleedMm">Bleed wanted on each side, mm.</param>
/// <param name="Quantity">How many; at least 1.</param>
/// <param name="StockId">The material.</param>
/// <param name="Build">How ink is built up.</param>
/// <param name="Finishing">What is done after printing.</param>
/// <param name="Due">Day it must be ready.</param>
/// <param name="ViewingDistanceM">From how far it is looked at, m.</param>
/// <param name="ArtworkScale">Scale the file is drawn at: 1, or 10 for 1:10.</param>
/// <param name="UpAlongGrain">Whether the picture's upright must run along the flutes or grain; null when it does not matter.</param>
/// <param name="Panels">How it is parted where it is larger than its stock; null for upright panels of equal width that overlap by 20 mm.</param>
/// <param name="SeamKeepOuts">Places that seams between panels should stay out of, besides text and codes that were found; null for none.</param>
/// <param name="Marks">Which marks are printed about its pieces; null for none.</param>
/// <param name="Repeat">Whether it is repeated in even steps on sheets of its own; null where it is laid out with others.</param>
/// <param name="KeepWith">Name of a set, such as a kit or a colour match: items that name the same one want the same boards. Null for none.</param>
/// <param name="OversAllowed">How many more may be made to fill the last board; 0 or more.</param>
/// <param name="BackArtwork">File name of the back's picture in the order's folder, counted as page 2; further pages of <paramref name="Artwork"/> follow it. Null where all pages are in one file.</param>
/// <param name="Turn">How boards printed on both faces are turned; null where it does not matter.</param>
public sealed record Item(
    string Id,
    string Title,
    string Artwork,
    double WidthMm,
    double HeightMm,
    double BleedMm,
    int Quantity,
    string StockId,
    BuildWish Build,
    IReadOnlyList<Finishing> Finishing,
    DateOnly Due,
    double ViewingDistanceM,
    int ArtworkScale,
    bool? UpAlongGrain,
    PanelWish? Panels = null,
    IReadOnlyList<SeamKeepOut>? SeamKeepOuts = null,
    MarkWish? Marks = null,
    RepeatWish? Repeat = null,
    string? KeepWith = null,
    int OversAllowed = 0,
    string? BackArtwork = null,
    TurnWish? Turn = null)
{
    /// <summary>Finished size.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public SizeMm Finished => new(WidthMm, HeightMm);

    /// <summary>Printed size: finished size and bleed on each side.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public SizeMm Printed => new(WidthMm + (2 * BleedMm), HeightMm + (2 * BleedMm));
}
