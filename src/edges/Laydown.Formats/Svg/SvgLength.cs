using System.Globalization;

namespace Laydown.Formats.Svg;

/// <summary>Lengths with units as SVG writes them; a number without a unit is 1/96 inch.</summary>
internal static class SvgLength
{
    /// <summary>The length in mm, or null for percentages, font-relative units and what is no length.</summary>
    public static double? Mm(string? text)
    {
        string value = text?.Trim() ?? "";
        string unit = value.Length >= 2 && char.IsLetter(value[^1]) ? value[^2..].ToLowerInvariant() : "";
        double? mm = unit switch
        {
            "mm" => 1,
            "cm" => 10,
            "in" => 25.4,
            "pt" => 25.4 / 72,
            "pc" => 25.4 / 6,
            "px" or "" => 25.4 / 96,
            _ => null,
        };
        return mm is not null && Number(value[..^unit.Length]) is { } number and > 0 ? number * mm : null;
    }

    /// <summary>Four numbers of a view box, its size positive; null for anything else.</summary>
    public static double[]? ViewBox(string? text)
    {
        string[] parts = (text ?? "").Split([' ', ',', '\t', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries);
        double?[] values = [.. parts.Select(Number)];
        return values.Length == 4 && values.All(v => v is not null) && values[2] > 0 && values[3] > 0 ? [.. values.Select(v => v!.Value)] : null;
    }

    private static double? Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) ? value : null;
}
