using Laydown.Press.Inks;
using Laydown.Raster.Screens;

namespace Laydown.Output.PressFiles;

/// <summary>What the screens want to know of a layer's inks.</summary>
internal static class DotInks
{
    /// <summary>The inks in the order of planes; a light ink belongs to the dark one of its hue where the layer has it.</summary>
    public static IReadOnlyList<ScreenInk> Of(IReadOnlyList<InkPlane> planes) =>
        [.. planes.Select(p => new ScreenInk(p.Name, DarknessOf(p.Role), DarkOf(p.Role) is { } dark ? PlaceOf(planes, dark) : null))];

    /// <summary>A name as part of a file's name: small letters, digits, hyphens.</summary>
    public static string FileWord(string ink) =>
        string.Join('-', string.Concat(ink.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : ' ')).Split(' ', StringSplitOptions.RemoveEmptyEntries));

    private static InkRole? DarkOf(InkRole role) => role switch
    {
        InkRole.LightCyan => InkRole.Cyan,
        InkRole.LightMagenta => InkRole.Magenta,
        _ => null,
    };

    private static int? PlaceOf(IReadOnlyList<InkPlane> planes, InkRole role)
    {
        for (int plane = 0; plane < planes.Count; plane++)
        {
            if (planes[plane].Role == role)
                return plane;
        }

        return null;
    }

    // How much a full ink darkens white paper, by its usual lightness: common practice, no source. White is judged on clear and dark sheets.
    private static double DarknessOf(InkRole role) => role switch
    {
        InkRole.Black => 1,
        InkRole.Magenta => 0.6,
        InkRole.Cyan => 0.55,
        InkRole.White => 0.5,
        InkRole.LightMagenta or InkRole.LightCyan => 0.2,
        InkRole.Yellow => 0.1,
        _ => 0.05,
    };
}
