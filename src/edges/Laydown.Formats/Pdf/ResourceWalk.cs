using Laydown.Artwork.Pages;
using UglyToad.PdfPig.Tokens;

namespace Laydown.Formats.Pdf;

/// <summary>Goes through the resources of a page, of its forms, patterns and fonts drawn by pictures, used or not: separations and fonts.</summary>
/// <param name="objects">The open file.</param>
/// <param name="notes">Where separations go.</param>
internal sealed class ResourceWalk(PdfObjects objects, PageNotes notes)
{
    private const int Deepest = 16;
    private const int MostDictionaries = 20_000;
    private readonly ColourSpaceReader colours = new(objects);
    private readonly HashSet<DictionaryToken> seen = new(ReferenceEqualityComparer.Instance);
    private readonly SortedDictionary<string, FontUse> fonts = new(StringComparer.Ordinal);

    /// <summary>Fonts found, by name.</summary>
    public IReadOnlyList<FontUse> Fonts => [.. fonts.Values];

    /// <summary>Goes through resources.</summary>
    public void Visit(DictionaryToken? resources, int depth = 0)
    {
        if (resources is null || depth > Deepest || seen.Count >= MostDictionaries || !seen.Add(resources))
            return;

        foreach (var (_, space) in objects.Entries(resources, "ColorSpace"))
            notes.Named(colours.Read(space, resources).Spots);
        foreach (var (_, shading) in objects.Entries(resources, "Shading"))
            Space(objects.AsDictionary(shading), resources);
        foreach (var (_, pattern) in objects.Entries(resources, "Pattern"))
            Pattern(objects.AsDictionary(pattern), resources, depth);
        foreach (var (_, external) in objects.Entries(resources, "XObject"))
            External(objects.AsDictionary(external), resources, depth);
        foreach (var (key, font) in objects.Entries(resources, "Font"))
            Font(key, objects.AsDictionary(font), depth);
        foreach (var (_, state) in objects.Entries(resources, "ExtGState"))
            Visit(objects.Dictionary(objects.Dictionary(objects.Dictionary(objects.AsDictionary(state), "SMask"), "G"), "Resources"), depth + 1);
    }

    private void Space(DictionaryToken? holder, DictionaryToken resources)
    {
        if (holder is not null && holder.Data.TryGetValue("ColorSpace", out var space))
            notes.Named(colours.Read(space, resources).Spots);
    }

    private void Pattern(DictionaryToken? pattern, DictionaryToken resources, int depth)
    {
        Space(objects.Dictionary(pattern, "Shading"), resources);
        Visit(objects.Dictionary(pattern, "Resources"), depth + 1);
    }

    private void External(DictionaryToken? external, DictionaryToken resources, int depth)
    {
        if (objects.Text(external, "Subtype") == "Image")
            Space(external, resources);
        else
            Visit(objects.Dictionary(external, "Resources"), depth + 1);
    }

    private void Font(string key, DictionaryToken? font, int depth)
    {
        if (font is null)
            return;

        string kind = objects.Text(font, "Subtype") ?? "unknown";
        string name = objects.Text(font, "BaseFont") ?? key;

        // The descriptor of a composite font stands on its one descendant.
        var descendant = kind == "Type0" && objects.Get<ArrayToken>(font, "DescendantFonts") is { Data.Count: > 0 } all ? objects.AsDictionary(all.Data[0]) : font;
        var descriptor = objects.Dictionary(descendant, "FontDescriptor");
        bool embedded = kind == "Type3" || (descriptor is not null && (descriptor.Data.ContainsKey("FontFile")
            || descriptor.Data.ContainsKey("FontFile2") || descriptor.Data.ContainsKey("FontFile3")));
        fonts.TryAdd(name + "/" + kind, new FontUse(name, kind, embedded));
        if (kind == "Type3")
            Visit(objects.Dictionary(font, "Resources"), depth + 1);
    }
}
