using System.Globalization;
using Laydown.Measures;

namespace Laydown.Shop.Run;

/// <summary>What of a sheet is shown: all layers in the light, one layer in the light, one ink as grey or in its own colour.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Number">Layer or ink from 1; 0 for all.</param>
public readonly record struct SheetSeen(SheetSeenKind Kind, int Number)
{
    /// <summary>The word in addresses: <c>all</c>, <c>layer-2</c>, <c>ink-3</c>, <c>tint-3</c>.</summary>
    public string Word => Kind switch
    {
        SheetSeenKind.All => "all",
        SheetSeenKind.Layer => Invariant($"layer-{Number}"),
        SheetSeenKind.Ink => Invariant($"ink-{Number}"),
        _ => Invariant($"tint-{Number}"),
    };

    /// <summary>What a word means on a sheet, or a fault with what it could have been.</summary>
    public static Reading<SheetSeen> Parse(string word, PressSheet sheet)
    {
        if (word == "all")
            return Reading.Of(new SheetSeen(SheetSeenKind.All, 0));
        string[] parts = word.Split('-');
        (SheetSeenKind kind, int most) = parts[0] switch
        {
            "layer" => (SheetSeenKind.Layer, sheet.Layers),
            "ink" => (SheetSeenKind.Ink, sheet.Planes.Count),
            "tint" => (SheetSeenKind.Tint, sheet.Planes.Count),
            _ => (SheetSeenKind.All, 0),
        };
        return parts.Length == 2 && int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= 1 && number <= most
            ? Reading.Of(new SheetSeen(kind, number))
            : Reading.Refused<SheetSeen>(new InputFault(
                Invariant($"run {sheet.RunId}, sheet {sheet.Number}"), null, "seen", Invariant($"'{(word.Length > 40 ? word[..40] : word)}'"),
                Invariant($"all, layer-1 to layer-{sheet.Layers}, ink-1 to ink-{sheet.Planes.Count} or tint-1 to tint-{sheet.Planes.Count}")));
    }
}
