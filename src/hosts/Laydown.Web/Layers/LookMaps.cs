using Laydown.Shop.Layers;

namespace Laydown.Web.Layers;

/// <summary>The maps a look carries, with their words.</summary>
public static class LookMaps
{
    private static readonly LookMap[] Known =
    [
        new("day", "off the wish by day", "How far the look by day is from what was aimed at, ΔE00.", PanelMapColours.DifferenceKeys),
        new("night", "off the wish with the lamp on", "How far the lit look is from what was aimed at, ΔE00.", PanelMapColours.DifferenceKeys),
        new("ghost", "night picture seen by day", "How much of the night picture shows by day to the eye at the viewing distance, ΔE.", PanelMapColours.DifferenceKeys),
        new("reason", "why it is out of reach", "Where the wish cannot be reached, and what stands in its way.", PanelMapColours.ReasonKeys),
    ];

    /// <summary>Those whose files the record names.</summary>
    public static IReadOnlyList<LookMap> Of(LookRecord record) => [.. Known.Where(m => record.Files.Any(f => f.Name == Invariant($"map-{m.Name}.png")))];
}
