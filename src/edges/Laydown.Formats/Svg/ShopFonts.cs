using System.Collections.Frozen;
using System.Reflection;
using SkiaSharp;
using Svg.Skia.TypefaceProviders;

namespace Laydown.Formats.Svg;

/// <summary>The shop's own fonts, carried in the program: drawing must not depend on what a machine has installed.</summary>
public sealed class ShopFonts : ITypefaceProvider
{
    private const string Prefix = "fonts/";
    private static readonly FrozenDictionary<string, SKTypeface> Faces = Load();

    /// <summary>Whether the shop has a family of this name.</summary>
    /// <param name="family">One family name.</param>
    public static bool Has(string family) => Families(family).Any(f => Faces.ContainsKey(f + "-Regular"));

    /// <summary>The face that comes nearest to what is asked for; Lato where the family is not known.</summary>
    /// <param name="families">A family, or several in the order they are wished for.</param>
    /// <param name="bold">Weight, 100 to 900.</param>
    /// <param name="italic">Whether it is slanted.</param>
    public static SKTypeface Face(string families, int bold, bool italic)
    {
        string family = Families(families).FirstOrDefault(f => Faces.ContainsKey(f + "-Regular")) ?? "Lato";
        string weight = bold >= 850 ? "Black" : bold >= 600 ? "Bold" : italic ? "Italic" : "Regular";
        return Faces.GetValueOrDefault(family + "-" + weight)
            ?? (bold >= 600 ? Faces.GetValueOrDefault(family + "-Bold") : null)
            ?? Faces[family + "-Regular"];
    }

    /// <inheritdoc/>
    public SKTypeface FromFamilyName(string fontFamily, SKFontStyleWeight fontWeight, SKFontStyleWidth fontWidth, SKFontStyleSlant fontStyle) =>
        Face(fontFamily, (int)fontWeight, fontStyle != SKFontStyleSlant.Upright);

    private static IEnumerable<string> Families(string list) =>
        list.Split(',').Select(f => f.Trim().Trim('\'', '"').Replace(" ", "", StringComparison.Ordinal));

    private static FrozenDictionary<string, SKTypeface> Load()
    {
        var assembly = Assembly.GetExecutingAssembly();
        return assembly.GetManifestResourceNames().Where(n => n.StartsWith(Prefix, StringComparison.Ordinal)).ToFrozenDictionary(
            n => Path.GetFileNameWithoutExtension(n[Prefix.Length..]),
            n =>
            {
                using var stream = assembly.GetManifestResourceStream(n)!;
                using var data = SKData.Create(stream);
                return SKTypeface.FromData(data);
            },
            StringComparer.OrdinalIgnoreCase);
    }
}
