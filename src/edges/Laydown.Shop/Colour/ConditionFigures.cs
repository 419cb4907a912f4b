using Laydown.Colour.Spaces;

namespace Laydown.Shop.Colour;

/// <summary>What a print condition can do, for plots.</summary>
/// <param name="InkNames">Inks in order.</param>
/// <param name="Volume">Volume of its gamut under its limits, media-relative, cubic Lab units.</param>
/// <param name="SrgbVolume">Volume of sRGB's, for comparison.</param>
/// <param name="Slices">Outlines of its gamut at L* 10, 20 … 90.</param>
/// <param name="SrgbSlices">Outlines of sRGB at the same.</param>
/// <param name="Neutrals">Inks for neutrals from white to the darkest.</param>
public sealed record ConditionFigures(
    IReadOnlyList<string> InkNames,
    double Volume,
    double SrgbVolume,
    IReadOnlyList<IReadOnlyList<Lab>> Slices,
    IReadOnlyList<IReadOnlyList<Lab>> SrgbSlices,
    IReadOnlyList<SeparatedColour> Neutrals);
