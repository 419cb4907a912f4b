using System.Globalization;
using System.Text.RegularExpressions;

namespace Laydown.Formats.Patches;

/// <summary>Names of inks in files, as plain words.</summary>
internal static partial class InkWords
{
    private static readonly Dictionary<string, string> Words = new(StringComparer.OrdinalIgnoreCase)
    {
        ["C"] = "Cyan",
        ["CYAN"] = "Cyan",
        ["M"] = "Magenta",
        ["MAGENTA"] = "Magenta",
        ["Y"] = "Yellow",
        ["YELLOW"] = "Yellow",
        ["K"] = "Black",
        ["BLACK"] = "Black",
        ["O"] = "Orange",
        ["ORANGE"] = "Orange",
        ["G"] = "Green",
        ["GREEN"] = "Green",
        ["V"] = "Violet",
        ["VIOLET"] = "Violet",
        ["R"] = "Red",
        ["RED"] = "Red",
        ["B"] = "Blue",
        ["BLUE"] = "Blue",
        ["LC"] = "Light Cyan",
        ["LIGHTCYAN"] = "Light Cyan",
        ["LM"] = "Light Magenta",
        ["LIGHTMAGENTA"] = "Light Magenta",
        ["LK"] = "Light Black",
        ["LIGHTBLACK"] = "Light Black",
        ["W"] = "White",
        ["WHITE"] = "White",
    };

    /// <summary>The plain word for a known name or letter, else null.</summary>
    public static string? Known(string name) =>
        Words.GetValueOrDefault(name.Replace(" ", "", StringComparison.Ordinal).Replace("_", "", StringComparison.Ordinal));

    /// <summary>The ink that a field names, such as CMYK_C, CMYKOGV_V, CMYKcm_m, 7CLR_1 or Orange; null where none is known.</summary>
    /// <param name="field">Name of the field.</param>
    /// <param name="letters">Letters of the inks where the file gives them apart; used for numbered fields when there are as many.</param>
    public static string? OfField(string field, string letters)
    {
        if (Numbered().Match(field) is { Success: true } numbered)
        {
            int ink = int.Parse(numbered.Groups[2].Value, NumberStyles.HexNumber, CultureInfo.InvariantCulture);
            int inks = int.Parse(numbered.Groups[1].Value, NumberStyles.HexNumber, CultureInfo.InvariantCulture);
            return letters.Length == inks && ink >= 1 && ink <= inks ? Known(letters[ink - 1].ToString()) ?? field : field;
        }

        if (Lettered().Match(field) is { Success: true } lettered && !field.StartsWith("RGB_", StringComparison.OrdinalIgnoreCase))
        {
            (string all, string one) = (lettered.Groups[1].Value, lettered.Groups[2].Value);
            if (all.Contains(one, StringComparison.OrdinalIgnoreCase) && all.Contains('C', StringComparison.OrdinalIgnoreCase))
                return IsLight(all, one) ? "Light " + Known(one) : Known(one);
        }

        return Known(field);
    }

    // A small letter beside the same capital is the light ink: CMYKcm.
    private static bool IsLight(string all, string one) =>
        one is "c" or "m" or "k" && all.Contains(one, StringComparison.Ordinal) && all.Contains(one.ToUpperInvariant(), StringComparison.Ordinal);

    [GeneratedRegex("^([2-9A-F]|1[0-5]?)(?:CLR|COLOR|COLOUR)_([1-9A-F])$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Numbered();

    [GeneratedRegex("^(CMY[A-Z]*|[CMYKOGVRBLWN]{1,15})_(L?[CMYKOGVRBWN])$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Lettered();
}
