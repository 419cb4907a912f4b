using Laydown.Press.Stacks;

namespace Laydown.Output.Documents;

/// <summary>Layers in the words of the papers.</summary>
internal static class LayerText
{
    /// <summary>What it is made of.</summary>
    internal static string Group(Layer layer) => layer.Group switch
    {
        InkGroup.Colour => "Colour",
        InkGroup.White => "White",
        InkGroup.Clear => "Clear",
        _ => "Block-out",
    };

    /// <summary>Face, source, strength, choke, shaping, mirroring.</summary>
    internal static string Detail(Layer layer)
    {
        List<string> words = [layer.Face == SheetFace.First ? "first surface" : "second surface"];
        words.Add(layer.Source switch
        {
            null => Invariant($"picture of page {layer.ArtworkPage}"),
            WhiteSource.Flood => "flood over the whole piece",
            WhiteSource.UnderImage => "wherever the picture has ink",
            WhiteSource.Inverse => "stronger where the picture is lighter",
            WhiteSource.Alpha => "from the file's alpha",
            WhiteSource.NamedSeparation => Invariant($"from the separation {layer.SeparationName}"),
            _ => "from a mask picture",
        });
        if (layer.Negative)
            words.Add("negative: the mask opens a window");
        if (layer.Source is not null)
            words.Add(Invariant($"{layer.StrengthPercent:0.#} %"));
        if (layer.ChokeMm != 0)
            words.Add(Invariant($"{(layer.ChokeMm > 0 ? "choke" : "spread")} {Math.Abs(layer.ChokeMm):0.##} mm"));
        words.AddRange(layer.Shaping.Words());
        words.Add(layer.Mirrored ? "mirrored" : "right-reading");
        return string.Join(" · ", words);
    }
}
