using System.Globalization;
using System.Text;

namespace Laydown.Formats.PdfWriting;

/// <summary>Writes an embedded font: Type 0 over a TrueType descendant, glyph numbers as codes, with the text they stand for.</summary>
internal static class PdfFontObjects
{
    /// <summary>Writes all objects of a font.</summary>
    public static void Write(PdfObjects objects, PdfFont font)
    {
        TrueTypeFont file = font.File!;
        byte[] data = file.Subset(font.Shown.Keys);
        string name = PdfText.Name(Tag(font) + "+" + font.Name);
        int program = objects.AddStream(Invariant($"/Length1 {data.Length}"), deflate: true, s => s.Write(data));
        string box = PdfText.Numbers(file.Box.Select(b => Thousandths(file, b)));
        string height = PdfText.Number(Thousandths(file, file.Ascent));
        string depth = PdfText.Number(Thousandths(file, file.Descent));
        int descriptor = objects.Add(Invariant(
            $"<< /Type /FontDescriptor /FontName {name} /Flags 4 /FontBBox [{box}] /ItalicAngle 0 /Ascent {height} /Descent {depth} /CapHeight {height} /StemV 80 /FontFile2 {program} 0 R >>"));
        string widths = string.Join(' ', font.Shown.Keys.Select(g => Invariant($"{g} [{PdfText.Number(Thousandths(file, file.Advance(g)))}]")));
        int descendant = objects.Add(Invariant(
            $"<< /Type /Font /Subtype /CIDFontType2 /BaseFont {name} /CIDSystemInfo << /Registry (Adobe) /Ordering (Identity) /Supplement 0 >> /FontDescriptor {descriptor} 0 R /DW 0 /W [{widths}] /CIDToGIDMap /Identity >>"));
        int text = objects.AddStream("", deflate: true, s => s.Write(Encoding.ASCII.GetBytes(ToUnicode(font))));
        objects.Write(font.ObjectId, Invariant(
            $"<< /Type /Font /Subtype /Type0 /BaseFont {name} /Encoding /Identity-H /DescendantFonts [{descendant} 0 R] /ToUnicode {text} 0 R >>"));
    }

    private static double Thousandths(TrueTypeFont file, int units) => 1000.0 * units / file.UnitsPerEm;

    /// <summary>Six letters that tell subsets of one font apart, from the glyphs shown.</summary>
    private static string Tag(PdfFont font)
    {
        uint hash = 2166136261;
        foreach (int glyph in font.Shown.Keys)
            hash = unchecked((hash ^ (uint)glyph) * 16777619);
        char[] letters = new char[6];
        for (int i = 0; i < letters.Length; i++, hash /= 26)
            letters[i] = (char)('A' + (hash % 26));
        return new(letters);
    }

    private static string ToUnicode(PdfFont font)
    {
        StringBuilder map = new();
        map.Append("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n");
        map.Append("/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n");
        foreach (KeyValuePair<int, string>[] block in font.Shown.Where(s => s.Value.Length > 0).Chunk(100))
        {
            map.Append(CultureInfo.InvariantCulture, $"{block.Length} beginbfchar\n");
            foreach ((int glyph, string text) in block)
                map.Append(CultureInfo.InvariantCulture, $"<{glyph:X4}> <{Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(text))}>\n");
            map.Append("endbfchar\n");
        }

        return map.Append("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n").ToString();
    }
}
