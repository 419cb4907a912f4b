using Laydown.Formats.PdfWriting;
using SkiaSharp;
using SkiaSharp.HarfBuzz;

namespace Laydown.Demo.Art;

/// <summary>Sets lines of text: which glyph stands where. Fonts come from the project itself.</summary>
internal static class Type
{
    private static readonly Dictionary<Face, (SKTypeface Skia, TrueTypeFont File, SKShaper Shaper)> Faces = Enum.GetValues<Face>().ToDictionary(f => f, Load);
    private static readonly Lock Shaping = new();

    /// <summary>PostScript name.</summary>
    public static string Name(Face face) => Invariant($"Lato-{face}");

    public static SKTypeface Skia(Face face) => Faces[face].Skia;

    public static TrueTypeFont File(Face face) => Faces[face].File;

    /// <summary>The glyphs of a line, placed in mm from its start, kerned, with extra tracking after each.</summary>
    public static IReadOnlyList<PdfGlyph> Set(string words, Face face, double sizeMm, double tracking = 0)
    {
        // Shaped at 1000 units, so that hinting and rounding play no part.
        using SKFont font = new(Faces[face].Skia, 1000) { Hinting = SKFontHinting.None, Subpixel = true };
        SKShaper.Result set;
        lock (Shaping)
            set = Faces[face].Shaper.Shape(words, font);
        List<PdfGlyph> glyphs = [];
        for (int i = 0; i < set.Codepoints.Length; i++)
        {
            int from = (int)set.Clusters[i];
            int to = i + 1 < set.Clusters.Length ? (int)set.Clusters[i + 1] : System.Text.Encoding.UTF8.GetByteCount(words);
            string text = System.Text.Encoding.UTF8.GetString(System.Text.Encoding.UTF8.GetBytes(words)[from..Math.Max(from, to)]);
            glyphs.Add(new((int)set.Codepoints[i], (set.Points[i].X * sizeMm / 1000) + (i * tracking), text));
        }

        return glyphs;
    }

    /// <summary>Length of a line, mm.</summary>
    public static double Width(string words, Face face, double sizeMm, double tracking = 0)
    {
        IReadOnlyList<PdfGlyph> glyphs = Set(words, face, sizeMm, tracking);
        TrueTypeFont file = File(face);
        return glyphs.Count == 0 ? 0 : glyphs[^1].XMm + (sizeMm * file.Advance(glyphs[^1].Id) / file.UnitsPerEm);
    }

    /// <summary>The line as one outline, for files without fonts.</summary>
    public static Outline Outlines(Element.Text line)
    {
        using SKFont font = new(Skia(line.Face), 1000) { Hinting = SKFontHinting.None };
        Outline all = new();
        foreach (PdfGlyph glyph in Set(line.Words, line.Face, line.SizeMm, line.Tracking))
        {
            using SKPath? path = font.GetGlyphPath((ushort)glyph.Id);
            if (path is not null)
                all.And(Outline.Of(path).At(Affine.Place(line.X + glyph.XMm, line.Y, line.SizeMm / 1000)));
        }

        return all;
    }

    private static (SKTypeface, TrueTypeFont, SKShaper) Load(Face face)
    {
        byte[] bytes = DemoFiles.Resource(Name(face) + ".ttf");
        using SKData data = SKData.CreateCopy(bytes);
        SKTypeface skia = SKTypeface.FromData(data);
        return (skia, new TrueTypeFont(bytes), new SKShaper(skia));
    }
}
