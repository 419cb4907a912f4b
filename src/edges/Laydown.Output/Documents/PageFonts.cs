using SkiaSharp;

namespace Laydown.Output.Documents;

/// <summary>The typefaces of the papers, carried within the program: no font of the machine is needed or used.</summary>
internal static class PageFonts
{
    /// <summary>Plain text.</summary>
    internal static SKTypeface Regular { get; } = Load("B612-Regular.otf");

    /// <summary>Heads and values.</summary>
    internal static SKTypeface Bold { get; } = Load("B612-Bold.otf");

    /// <summary>Figures of equal width.</summary>
    internal static SKTypeface Mono { get; } = Load("B612Mono-Regular.otf");

    /// <summary>Ids.</summary>
    internal static SKTypeface MonoBold { get; } = Load("B612Mono-Bold.otf");

    private static readonly SKTypeface Spare = Load("Lato-Regular.ttf"), SpareBold = Load("Lato-Bold.ttf");

    /// <summary>The text cut into pieces that one typeface can show; what none can show becomes a small square.</summary>
    internal static IEnumerable<(SKTypeface Face, string Text)> Pieces(SKTypeface wanted, string text)
    {
        SKTypeface spare = wanted == Bold || wanted == MonoBold ? SpareBold : Spare;
        SKTypeface now = wanted;
        System.Text.StringBuilder piece = new();
        foreach (System.Text.Rune rune in text.EnumerateRunes())
        {
            (SKTypeface face, string sign) = Sign(wanted, spare, rune);
            if (face != now && piece.Length > 0)
            {
                yield return (now, piece.ToString());
                piece.Clear();
            }

            now = face;
            piece.Append(sign);
        }

        if (piece.Length > 0)
            yield return (now, piece.ToString());
    }

    /// <summary>The bytes of a typeface, to be put into a page.</summary>
    internal static byte[] Bytes(string name)
    {
        using Stream stream = Open(name);
        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    private static (SKTypeface Face, string Sign) Sign(SKTypeface wanted, SKTypeface spare, System.Text.Rune rune) =>
        Shows(wanted, rune) ? (wanted, rune.ToString())
        : Shows(spare, rune) ? (spare, rune.ToString())
        : System.Text.Rune.IsWhiteSpace(rune) || System.Text.Rune.IsControl(rune) ? (wanted, " ")
        : (spare, "\u25A1");

    private static bool Shows(SKTypeface face, System.Text.Rune rune)
    {
        using SKFont font = new(face, 10);
        return font.ContainsGlyph(rune.Value);
    }

    private static SKTypeface Load(string name)
    {
        using var data = SKData.CreateCopy(Bytes(name));
        return SKTypeface.FromData(data) ?? throw new InvalidOperationException(Invariant($"The typeface {name} within the program cannot be read."));
    }

    private static Stream Open(string name) => typeof(PageFonts).Assembly.GetManifestResourceStream(Invariant($"fonts/{name}"))
        ?? throw new InvalidOperationException(Invariant($"The typeface {name} is missing from the program."));
}
