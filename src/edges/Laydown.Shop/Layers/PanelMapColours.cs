using Laydown.Optics.Panels;
using Laydown.Shop.Colour;

namespace Laydown.Shop.Layers;

/// <summary>Colours and words of the maps of a panel: steps of difference from light to dark, a colour of its own for each reason.</summary>
public static class PanelMapColours
{
    private static readonly (double Most, MapKey Key)[] Steps =
    [
        (1, new(0xF7, 0xF7, 0xF2, "under 1: nobody sees it")), (2, new(0xE3, 0xE6, 0xC8, "1 to 2: seen side by side")),
        (3, new(0xF2, 0xD1, 0x7B, "2 to 3")), (6, new(0xE8, 0x9B, 0x4C, "3 to 6: another colour")),
        (10, new(0xC7, 0x53, 0x3B, "6 to 10")), (double.MaxValue, new(0x6E, 0x1F, 0x3C, "over 10")),
    ];

    private static readonly (UnreachableReason Reason, MapKey Key)[] Reasons =
    [
        (UnreachableReason.Reached, new(0xF2, 0xF2, 0xEE, "reached")),
        (UnreachableReason.DayTooLight, new(0xF4, 0xD3, 0x5E, "day lighter than white and inks get")),
        (UnreachableReason.DayTooDark, new(0x8C, 0x5A, 0x2B, "day darker than the ink limits allow")),
        (UnreachableReason.DayTooColourful, new(0xE0, 0x6C, 0x75, "day more colourful than the inks")),
        (UnreachableReason.NightTooBright, new(0x4F, 0xA3, 0xD1, "night brighter than the panel gets")),
        (UnreachableReason.NightTooDark, new(0x22, 0x3A, 0x5E, "night darker than the inks close the panel")),
        (UnreachableReason.NightTooColourful, new(0x7B, 0x5E, 0xA7, "night more colourful than the inks")),
        (UnreachableReason.DayHoldsLightBack, new(0x2F, 0x7D, 0x5B, "day ink holds the night's light back")),
        (UnreachableReason.DayFiltersHue, new(0x9B, 0xC5, 0x6D, "day colour filters the night's hue away")),
        (UnreachableReason.Traded, new(0xB5, 0xB5, 0xB5, "traded between the two views")),
    ];

    /// <summary>Keys of maps of differences.</summary>
    public static IReadOnlyList<MapKey> DifferenceKeys { get; } = [.. Steps.Select(s => s.Key)];

    /// <summary>Keys of the map of reasons.</summary>
    public static IReadOnlyList<MapKey> ReasonKeys { get; } = [.. Reasons.Select(r => r.Key)];

    /// <summary>A reason in words.</summary>
    public static string Words(UnreachableReason reason) => KeyOf(reason).Words;

    /// <summary>The map of differences.</summary>
    public static RgbPicture Of(int width, int height, float[] differences) => Painted(width, height, i => Steps.First(s => differences[i] <= s.Most).Key);

    /// <summary>The map of reasons.</summary>
    public static RgbPicture Of(int width, int height, UnreachableReason[] reasons) => Painted(width, height, i => KeyOf(reasons[i]));

    private static MapKey KeyOf(UnreachableReason reason) => Reasons.First(r => r.Reason == reason).Key;

    private static RgbPicture Painted(int width, int height, Func<int, MapKey> keyOf)
    {
        byte[] rgb = new byte[3 * width * height];
        for (int i = 0; i < width * height; i++)
        {
            MapKey key = keyOf(i);
            (rgb[3 * i], rgb[(3 * i) + 1], rgb[(3 * i) + 2]) = (key.Red, key.Green, key.Blue);
        }

        return new(width, height, rgb);
    }
}
