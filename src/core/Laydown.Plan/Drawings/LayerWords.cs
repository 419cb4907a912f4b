using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Drawings;

/// <summary>Layers in words.</summary>
internal static class LayerWords
{
    /// <summary>What the layer is made of.</summary>
    internal static string Name(Layer layer) => layer.Group switch
    {
        InkGroup.Colour => Invariant($"Colour, page {layer.ArtworkPage}"),
        InkGroup.White => "White",
        InkGroup.Clear => "Clear",
        _ => "Block-out",
    };

    /// <summary>Source, strength, choke, shaping and reading direction; a flood reads the same either way.</summary>
    internal static string Detail(Layer layer)
    {
        List<string> words = [];
        if (Source(layer) is string source)
            words.Add(source);
        if (layer.Group is not InkGroup.Colour || layer.StrengthPercent is not 100)
            words.Add(Invariant($"{layer.StrengthPercent:0.#} %"));
        if (layer.Negative)
            words.Add("negative: the mask opens a window");
        if (layer.ChokeMm != 0)
            words.Add(Invariant($"{(layer.ChokeMm > 0 ? "choke" : "spread")} {Math.Abs(layer.ChokeMm):0.##} mm"));
        words.AddRange(layer.Shaping.Words());
        if (!layer.IsFlood)
            words.Add(layer.Mirrored ? "mirrored" : "right-reading");
        return string.Join(", ", words);
    }

    /// <summary>What the sheet does with light.</summary>
    internal static string Light(SheetLight light) => light switch
    {
        SheetLight.Opaque => "opaque",
        SheetLight.Opal => "opal",
        _ => "clear",
    };

    private static string? Source(Layer layer) => layer.Source switch
    {
        null => null,
        WhiteSource.Flood => "flood",
        WhiteSource.UnderImage => "wherever the picture has ink",
        WhiteSource.Inverse => "the more, the lighter the picture",
        WhiteSource.Alpha => "from the file's alpha",
        WhiteSource.NamedSeparation => Invariant($"from separation “{layer.SeparationName}”"),
        _ => "from a mask picture",
    };
}
