using Laydown.Raster.Screens;
using Laydown.Shop.Run;

namespace Laydown.Web.Run;

/// <summary>Words of the form that makes dots.</summary>
public static class DotWords
{
    /// <summary>Packings by their word, with what is said of them.</summary>
    public static readonly IReadOnlyList<(string Word, string Said, DotCompression Packing)> Packings =
    [
        ("none", "not packed", DotCompression.None),
        ("packbits", "PackBits: packs bare sheet", DotCompression.PackBits),
        ("deflate", "Deflate: the smallest files", DotCompression.Deflate),
    ];

    /// <summary>Screens by their word, with what is said of them.</summary>
    public static readonly IReadOnlyList<(string Word, string Said, ScreenKind Kind)> Screens =
    [
        ("arrays", "each hue in an order of its own", ScreenKind.Arrays),
        ("intervals", "dark inks beside each other, not on each other", ScreenKind.Intervals),
        ("diffusion", "finest detail, for small text; slower", ScreenKind.Diffusion),
    ];

    /// <summary>What a filled form wants, or null where a word is none of these.</summary>
    public static DotsWish? Wish(string packing, string screen)
    {
        int pack = Packings.ToList().FindIndex(p => p.Word == packing), kind = Screens.ToList().FindIndex(s => s.Word == screen);
        return pack < 0 || kind < 0 ? null : new(null, Packings[pack].Packing, true, Screens[kind].Kind);
    }
}
