using Laydown.Measures;

namespace Laydown.Press.Stacks;

/// <summary>One ink layer.</summary>
/// <param name="Face">The face it is printed on.</param>
/// <param name="Group">What it is made of.</param>
/// <param name="Source">Where its picture comes from; null for colour.</param>
/// <param name="SeparationName">The named separation, when that is the source.</param>
/// <param name="ArtworkPage">Page of the item's artwork from 1 that it shows or is derived from.</param>
/// <param name="StrengthPercent">Strength, percent of full laydown, over 0 to 200; colour at most 100.</param>
/// <param name="ChokeMm">Choke (positive) or spread (negative), mm.</param>
/// <param name="Mirrored">Whether it is printed mirrored: the one it is meant for sees it through the sheet.</param>
/// <param name="Negative">Whether its mask is read the other way round: ink where the mask has none, so that the mask opens a window.</param>
/// <param name="FeatherMm">Width over which the edge of its mask fades, mm: inside the edge where positive, outside where negative.</param>
/// <param name="MinFeatureMm">Least width of its ink, mm, or of gaps in it where negative.</param>
/// <param name="StrengthCurve">Strength at even steps of the mask, percent from 0 to 100; null for straight.</param>
/// <param name="KeepOutsMm">Places that stay bare, mm from the lower left corner of the finished piece; null for none.</param>
public sealed record Layer(
    SheetFace Face,
    InkGroup Group,
    WhiteSource? Source,
    string? SeparationName,
    int ArtworkPage,
    double StrengthPercent,
    double ChokeMm,
    bool Mirrored,
    bool Negative = false,
    double FeatherMm = 0,
    double MinFeatureMm = 0,
    IReadOnlyList<double>? StrengthCurve = null,
    IReadOnlyList<RectMm>? KeepOutsMm = null)
{
    /// <summary>What is done to its mask after the choke.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public MaskShaping Shaping => new(FeatherMm, MinFeatureMm, StrengthCurve, KeepOutsMm);

    /// <summary>The layer with its mask shaped.</summary>
    /// <param name="shaping">What is done; null for nothing.</param>
    public Layer With(MaskShaping? shaping) => this with
    {
        FeatherMm = shaping?.FeatherMm ?? 0,
        MinFeatureMm = shaping?.MinFeatureMm ?? 0,
        StrengthCurve = shaping?.StrengthCurve,
        KeepOutsMm = shaping?.KeepOutsMm,
    };

    /// <summary>Whether it covers the whole piece.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public bool IsFlood => Group != InkGroup.Colour && Source is null or WhiteSource.Flood;

    /// <summary>Whether its picture can be read the other way round; a flood and what is derived from the picture itself cannot.</summary>
    public static bool TakesNegative(WhiteSource? source) =>
        source is WhiteSource.Alpha or WhiteSource.NamedSeparation or WhiteSource.MaskPicture;
}
