using Laydown.Press.Stacks;

namespace Laydown.Plan.Orders;

/// <summary>What the customer wants to see; the stack is derived from it.</summary>
/// <param name="SeenThroughSheet">Whether the picture is looked at through the sheet (second surface).</param>
/// <param name="Lit">Whether a lamp stands behind it.</param>
/// <param name="DayNight">Whether one picture shows by day and another when lit: page 1 by day, page 2 lit.</param>
/// <param name="White">Where white comes from; null for no white.</param>
/// <param name="WhiteSeparation">The named separation, when that is the source.</param>
/// <param name="WhitePercent">Strength of the white, percent of full laydown.</param>
/// <param name="WhiteChokeMm">Choke of the white, mm.</param>
/// <param name="Clear">Whether clear is printed over all.</param>
/// <param name="Printed">Which face is printed; by itself it follows from the rest.</param>
/// <param name="SeenFrom">From which sides it is looked at.</param>
/// <param name="Back">What lies behind the white: the same picture again (a lit print that does not wash out, or the same sign from both sides) or
/// one of its own (page 2, for a viewer on the back).</param>
/// <param name="BackPercent">Strength of the picture behind the white, percent of full laydown, over 0 to 100; null for the strength at which the same
/// picture looks alike by day and lit, and for full where the pictures differ or two viewers look.</param>
/// <param name="BlockOut">Where block-out lies, so that no light comes through; null for none.</param>
/// <param name="BlockOutSeparation">The named separation, when that is its source.</param>
/// <param name="BlockOutPercent">Strength of the block-out, percent of full laydown, over 0 to 200.</param>
/// <param name="BlockOutChokeMm">Choke of the block-out, mm.</param>
/// <param name="WhiteNegative">Whether the mask of the white is read the other way round: it opens a window.</param>
/// <param name="BlockOutNegative">Whether the mask of the block-out is read the other way round: it opens a window for the lamp.</param>
/// <param name="MaskPage">Page of the mask picture; null for the page after the pictures.</param>
/// <param name="Layers">Layers written out by hand in the order they are printed; null to have them derived from the rest.</param>
/// <param name="WhiteShaping">What is done to the mask of the white after its choke; null for nothing.</param>
/// <param name="BlockOutShaping">What is done to the mask of the block-out after its choke; null for nothing.</param>
/// <param name="ClearShaping">What is done to the clear, such as places kept out; null for nothing.</param>
public sealed record BuildWish(
    bool SeenThroughSheet,
    bool Lit,
    bool DayNight,
    WhiteSource? White,
    string? WhiteSeparation,
    double WhitePercent,
    double WhiteChokeMm,
    bool Clear,
    PrintedFace Printed = PrintedFace.Auto,
    SeenFrom SeenFrom = SeenFrom.OneSide,
    BackPicture Back = BackPicture.None,
    double? BackPercent = null,
    WhiteSource? BlockOut = null,
    string? BlockOutSeparation = null,
    double BlockOutPercent = 100,
    double BlockOutChokeMm = 0,
    bool WhiteNegative = false,
    bool BlockOutNegative = false,
    int? MaskPage = null,
    IReadOnlyList<Layer>? Layers = null,
    MaskShaping? WhiteShaping = null,
    MaskShaping? BlockOutShaping = null,
    MaskShaping? ClearShaping = null)
{
    /// <summary>Page of the picture behind the white; null where there is none.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public int? BackPage => DayNight || Back == BackPicture.Own ? 2 : Back == BackPicture.Same ? 1 : null;

    /// <summary>Pages of the artwork that are pictures: 1 or 2.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public int Pictures => Layers is { Count: > 0 } ? Layers.Where(l => l.Group == InkGroup.Colour).Select(l => l.ArtworkPage).DefaultIfEmpty(1).Max() : BackPage ?? 1;

    /// <summary>Page read as a mask, where a mask picture is wanted.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public int MaskPageOrNext => MaskPage ?? Pictures + 1;

    /// <summary>Last page of the artwork that a layer is made from.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public int LastPage => Layers is { Count: > 0 }
        ? Layers.Max(l => l.ArtworkPage)
        : Math.Max(Pictures, White is WhiteSource.MaskPicture || BlockOut is WhiteSource.MaskPicture ? MaskPageOrNext : 0);

    /// <summary>Whether white is printed.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public bool PrintsWhite => Layers?.Any(l => l.Group == InkGroup.White) ?? (White is not null || BackPage is not null || BlockOut is not null);
}
