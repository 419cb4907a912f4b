namespace Laydown.Formats.PdfWriting;

/// <summary>A font of a PDF file. An embedded one keeps the shapes of the glyphs that were shown, and no others.</summary>
public sealed class PdfFont
{
    internal PdfFont(int objectId, TrueTypeFont? file, string name)
    {
        ObjectId = objectId;
        File = file;
        Name = name;
    }

    /// <summary>Its PostScript name.</summary>
    public string Name { get; }

    internal int ObjectId { get; }

    /// <summary>The font file; null for a font that is only named.</summary>
    internal TrueTypeFont? File { get; }

    /// <summary>Glyphs shown so far with the text each stands for.</summary>
    internal SortedDictionary<int, string> Shown { get; } = [];
}
