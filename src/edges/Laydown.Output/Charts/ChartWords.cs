using Laydown.Formats.PdfWriting;
using Laydown.Output.Documents;
using SkiaSharp;

namespace Laydown.Output.Charts;

/// <summary>The typeface of the words on charts, for files and for pixels.</summary>
internal static class ChartWords
{
    /// <summary>For pixels.</summary>
    internal static SKTypeface Face { get; } = Load();

    /// <summary>A fresh font for a PDF file.</summary>
    internal static PdfFont AddTo(PdfFile file) => file.AddFont(new TrueTypeFont(PageFonts.Bytes("Lato-Regular.ttf")), "Lato-Regular");

    /// <summary>A line as glyphs, without kerning.</summary>
    internal static IReadOnlyList<PdfGlyph> Glyphs(string words, double sizeMm)
    {
        using SKFont font = new(Face, 1000) { Hinting = SKFontHinting.None };
        ushort[] ids = font.GetGlyphs(words);
        float[] widths = font.GetGlyphWidths(ids);
        List<PdfGlyph> glyphs = [];
        double at = 0;
        foreach (System.Text.Rune rune in words.EnumerateRunes())
        {
            int glyph = glyphs.Count;
            glyphs.Add(new(ids[glyph], at, rune.ToString()));
            at += widths[glyph] * sizeMm / 1000;
        }

        return glyphs;
    }

    private static SKTypeface Load()
    {
        using SKData data = SKData.CreateCopy(PageFonts.Bytes("Lato-Regular.ttf"));
        return SKTypeface.FromData(data);
    }
}
