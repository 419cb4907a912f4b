using Laydown.Measures;
using Laydown.Press.Stacks;

namespace Laydown.Shop.Layers;

/// <summary>A stored set of planes of one piece with everything needed to see and to print it.</summary>
/// <remarks>
/// Kept as <c>look.json</c> in a folder of its own, <c>looks/<i>item</i>/<i>look</i></c>, beside <c>planes.raw</c> — plane after plane in the order of
/// <see cref="Layers"/> and their inks, row after row from the top as the viewer sees it (mirroring taken out), one byte a pixel, 255 = full laydown —
/// and pictures. A solved look also has <c>wish.raw</c>: six planes of bytes, L* · 2.55, a* + 128, b* + 128 of what was aimed at by day, then at night.
/// The folder is whole or absent.
/// </remarks>
/// <param name="ItemId">The item; empty for a look made of two files outside any order.</param>
/// <param name="LookId">Unique within the item: <c>L-1</c>, <c>L-2</c> …</param>
/// <param name="Made">When.</param>
/// <param name="How">How the planes came about.</param>
/// <param name="WidthPx">Pixels across.</param>
/// <param name="HeightPx">Pixels down.</param>
/// <param name="Ppi">Resolution, ppi.</param>
/// <param name="SizeMm">Printed size, bleed included.</param>
/// <param name="BleedMm">Bleed on each side within it, mm.</param>
/// <param name="Layers">Layers in print order.</param>
/// <param name="StockId">The sheet.</param>
/// <param name="InkSetId">The inks.</param>
/// <param name="ConditionId">The print condition.</param>
/// <param name="Generic">Whether the ink set carries no measured optics and generic inks stand for it.</param>
/// <param name="ViewedFrom">The face toward the viewer.</param>
/// <param name="Day">Light by day.</param>
/// <param name="Night">Light with the lamp on.</param>
/// <param name="ArtworkSha256">SHA-256 of the item's artwork it was made from, lower-case hex; null where it was made of other files.</param>
/// <param name="Wish">What was wished; null where it was separated.</param>
/// <param name="Pair">Where the two pictures came from and how they were laid on each other; null where it was separated.</param>
/// <param name="Aim">What was aimed at; null where it was separated.</param>
/// <param name="Report">How near it comes; null where it was separated.</param>
/// <param name="Findings">What was noticed in the pictures.</param>
/// <param name="Files">Files of the folder, <c>look.json</c> itself left out.</param>
/// <param name="Note">Words of whoever made it, or null.</param>
public sealed record LookRecord(
    string ItemId,
    string LookId,
    DateTimeOffset Made,
    LookHow How,
    int WidthPx,
    int HeightPx,
    double Ppi,
    SizeMm SizeMm,
    double BleedMm,
    IReadOnlyList<LookedLayer> Layers,
    string StockId,
    string InkSetId,
    string ConditionId,
    bool Generic,
    SheetFace ViewedFrom,
    LookScene Day,
    LookScene Night,
    string? ArtworkSha256,
    LookWish? Wish,
    PairWish? Pair,
    LookAim? Aim,
    LookReport? Report,
    IReadOnlyList<Finding> Findings,
    IReadOnlyList<LookFile> Files,
    string? Note)
{
    /// <summary>Name of the file of planes.</summary>
    public const string PlanesFile = "planes.raw";

    /// <summary>Name of the file of what was aimed at.</summary>
    public const string WishFile = "wish.raw";

    /// <summary>Number of planes: all inks of all layers.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public int PlaneCount => Layers.Sum(l => l.Inks.Count);

    /// <summary>SHA-256 of the planes, or null where the record names none.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public string? PlanesSha256 => Files.FirstOrDefault(f => f.Name == PlanesFile)?.Sha256;
}
