using System.Globalization;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Shop.Layers;

namespace Laydown.Cli.Layers;

/// <summary>Reads layers from a command line, such as <c>second:CMYK,second:white@100,second:CMYK</c>.</summary>
internal static class LayerWords
{
    public const string Form = "FACE:INKS[@STRENGTH] with commas between, such as second:CMYK,second:white@100,second:CMYK; "
        + "FACE is first or second, INKS the letters C M Y K c m (small ones for light inks) or white, clear, black";

    /// <summary>The layers, or null where a part cannot be understood.</summary>
    public static IReadOnlyList<AskedLayer>? Read(string text)
    {
        AskedLayer?[] layers = [.. text.Split(',', StringSplitOptions.TrimEntries).Select(Layer)];
        return layers.Any(l => l is null) ? null : [.. layers.OfType<AskedLayer>()];
    }

    /// <summary>A face by its name, or null.</summary>
    public static SheetFace? Face(string word) => word.ToUpperInvariant() switch
    {
        "FIRST" => SheetFace.First,
        "SECOND" => SheetFace.Second,
        _ => null,
    };

    private static AskedLayer? Layer(string part)
    {
        string[] parts = part.Split(':');
        if (parts.Length != 2 || Face(parts[0]) is not { } face)
            return null;
        string[] ends = parts[1].Split('@');
        double strength = 100;
        if (ends.Length > 2 || (ends.Length == 2 && !double.TryParse(ends[1], NumberStyles.Float, CultureInfo.InvariantCulture, out strength)))
            return null;
        return Inks(ends[0]) is { Count: > 0 } inks && strength is > 0 and <= 200 ? new(face, inks, strength) : null;
    }

    private static IReadOnlyList<InkRole>? Inks(string word)
    {
        InkRole? one = word.ToUpperInvariant() switch { "WHITE" => InkRole.White, "CLEAR" => InkRole.Clear, "BLACK" => InkRole.Black, _ => null };
        if (one is { } role)
            return [role];
        InkRole?[] roles = [.. word.Select(letter => letter switch
        {
            'C' => InkRole.Cyan,
            'M' => InkRole.Magenta,
            'Y' => InkRole.Yellow,
            'K' => InkRole.Black,
            'c' => InkRole.LightCyan,
            'm' => InkRole.LightMagenta,
            _ => (InkRole?)null,
        })];
        return roles.Any(r => r is null) || roles.Distinct().Count() < roles.Length ? null : [.. roles.OfType<InkRole>()];
    }
}
