using Laydown.Artwork.Pages;
using Laydown.Formats.Images;
using Laydown.Measures;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Exceptions;
using UglyToad.PdfPig.Tokens;

namespace Laydown.Formats.Pdf;

/// <summary>Measures PDF files from their objects. Nothing is rendered and nothing of the file is run.</summary>
public static class PdfReader
{
    private const int TailBytes = 4096;

    /// <summary>The file as measured, or why it cannot be taken (cut short, locked, too many pages, too much work).</summary>
    /// <param name="path">The file.</param>
    /// <param name="limits">How much work it may make.</param>
    /// <param name="cancellation">Stops the reading between operations.</param>
    public static Reading<PdfContent> Read(string path, PdfLimits limits, CancellationToken cancellation) =>
        WithDocument(path, document => Content(document, Path.GetFileName(path), limits, cancellation));

    /// <summary>The boxes of one page.</summary>
    /// <param name="path">The file.</param>
    /// <param name="page">Page from 1.</param>
    /// <param name="limits">How much work it may make.</param>
    public static Reading<PageBoxes> Boxes(string path, int page, PdfLimits limits) => WithDocument(path, document =>
        page < 1 || page > document.NumberOfPages
            ? Refused<PageBoxes>(path, "page", Invariant($"page {page} of {document.NumberOfPages}"), "a page of the file")
            : BoxReader.Read(new PdfObjects(document.Structure, limits.StreamBytes), document.GetPage(page).Dictionary, Path.GetFileName(path), page, limits.SideMm));

    private static Reading<T> Refused<T>(string path, string field, string found, string wanted) =>
        Reading.Refused<T>(new InputFault(Path.GetFileName(path), null, field, found, wanted));

    private static Reading<T> WithDocument<T>(string path, Func<PdfDocument, Reading<T>> read)
    {
        if (!HasEnd(path))
            return Refused<T>(path, "end of file", "no startxref and %%EOF: the file is cut short", "a whole PDF");
        try
        {
            using var document = PdfDocument.Open(path, new ParsingOptions { UseLenientParsing = true, SkipMissingFonts = true, ClipPaths = false });
            return document.NumberOfPages > 0 ? read(document) : Refused<T>(path, "pages", "no page", "at least one page");
        }
        catch (PdfDocumentEncryptedException)
        {
            return Refused<T>(path, "Encrypt", "a file locked with a password", "a file that opens without a password");
        }
        catch (TooMuchWorkException much)
        {
            return Refused<T>(path, "content", much.Message, "a simpler page");
        }
        catch (OutOfMemoryException)
        {
            return Refused<T>(path, "content", "more than fits in memory", "a simpler page");
        }
        catch (Exception damage) when (damage is not OperationCanceledException)
        {
            // The parser throws many kinds on hostile files; each means the same to the customer.
            return Refused<T>(path, "PDF structure", "damaged (" + FirstLine(damage.Message) + ")", "a PDF that can be opened");
        }
    }

    private static bool HasEnd(string path)
    {
        using var file = File.OpenRead(path);
        byte[] tail = new byte[Math.Min(TailBytes, file.Length)];
        file.Seek(-tail.Length, SeekOrigin.End);
        file.ReadExactly(tail);
        return tail.AsSpan().IndexOf("startxref"u8) >= 0 && tail.AsSpan().LastIndexOf("%%EOF"u8) > tail.AsSpan().LastIndexOf("startxref"u8);
    }

    private static string FirstLine(string message) => message.ReplaceLineEndings(" ") is { Length: > 160 } text ? text[..160] : message.ReplaceLineEndings(" ");

    private static Reading<PdfContent> Content(PdfDocument document, string file, PdfLimits limits, CancellationToken cancellation)
    {
        if (document.NumberOfPages > limits.Pages)
            return Refused<PdfContent>(file, "pages", Invariant($"{document.NumberOfPages} pages"), Invariant($"at most {limits.Pages} pages in one file"));

        var objects = new PdfObjects(document.Structure, limits.StreamBytes);
        var catalog = document.Structure.Catalog.CatalogDictionary;
        var layers = new LayerReader(objects, catalog);
        var intent = Intent(objects, catalog);
        var pages = new List<ArtworkPage>();
        for (int number = 1; number <= document.NumberOfPages; number++)
        {
            cancellation.ThrowIfCancellationRequested();
            var page = document.GetPage(number);
            var boxes = BoxReader.Read(objects, page.Dictionary, file, number, limits.SideMm);
            if (!boxes.IsTaken)
                return Reading.Refused<PdfContent>(boxes.Faults);
            pages.Add(Page(objects, layers, page, boxes.Value, intent.Profile, limits, cancellation));
        }

        return Reading.Of(new PdfContent(Invariant($"{document.Version:0.0}"), intent.Condition, pages));
    }

    private static ArtworkPage Page(
        PdfObjects objects, LayerReader layers, UglyToad.PdfPig.Content.Page page, PageBoxes boxes, string? intentProfile, PdfLimits limits, CancellationToken cancellation)
    {
        var notes = new PageNotes();
        var resources = objects.Inherited(page.Dictionary, "Resources") as DictionaryToken;
        new PageWalk(objects, layers, notes, limits.Operations, cancellation).Page(Bytes(objects, page.Dictionary), resources, boxes.ToMm);
        var walk = new ResourceWalk(objects, notes);
        walk.Visit(resources);
        PointMm seen = SeenCorner(objects, page.Dictionary, boxes);
        var texts = TextMeasure.Smallest(page.Letters, boxes.UserUnit, seen);
        return new(
            page.Number, boxes.UserUnit, boxes.MediaMm, boxes.TrimMm, boxes.BleedMm, boxes.HasTrimBox, 0, 0, notes.ColourSpaces,
            GroupProfile(objects, page.Dictionary) ?? intentProfile, HasAlpha: false, notes.Transparency, notes.Overprint, notes.HiddenLayers, notes.Images,
            walk.Fonts, notes.Separations, texts, notes.Lines.Kept, notes.CutPaths, null, null, [])
        { TextPlaces = TextMeasure.Places(page.Letters, boxes.UserUnit, seen) };
    }

    /// <summary>The content of a page: one stream, or several that are read as one.</summary>
    private static ReadOnlyMemory<byte> Bytes(PdfObjects objects, DictionaryToken page)
    {
        var parts = objects.Resolve(page.Data.GetValueOrDefault("Contents")) switch
        {
            StreamToken one => [one],
            ArrayToken several => several.Data.Select(objects.Resolve).OfType<StreamToken>(),
            _ => Enumerable.Empty<StreamToken>(),
        };
        using var all = new MemoryStream();
        foreach (var part in parts)
        {
            all.Write(objects.Decode(part).Span);
            all.WriteByte((byte)'\n');
        }

        return all.ToArray();
    }

    /// <summary>Letters are placed from the corner of the crop box, where there is one within the media.</summary>
    private static PointMm SeenCorner(PdfObjects objects, DictionaryToken page, PageBoxes boxes)
    {
        if (objects.Numbers(objects.Inherited(page, "CropBox"), 4) is not { } crop)
            return new(0, 0);
        var seen = boxes.ToMm.MapBox(Math.Min(crop[0], crop[2]), Math.Min(crop[1], crop[3]), Math.Max(crop[0], crop[2]), Math.Max(crop[1], crop[3]));
        return new(Math.Max(0, seen.XMm), Math.Max(0, seen.YMm));
    }

    private static (string? Condition, string? Profile) Intent(PdfObjects objects, DictionaryToken catalog)
    {
        if (objects.Get<ArrayToken>(catalog, "OutputIntents") is not { Data.Count: > 0 } intents || objects.AsDictionary(intents.Data[0]) is not { } first)
            return (null, null);
        string? profile = objects.Get<StreamToken>(first, "DestOutputProfile") is { } stream ? ProfileName.Of(objects.Decode(stream).Span) : null;
        return (objects.Text(first, "OutputConditionIdentifier") ?? objects.Text(first, "Info") ?? profile, profile);
    }

    private static string? GroupProfile(PdfObjects objects, DictionaryToken page) =>
        objects.Get<ArrayToken>(objects.Dictionary(page, "Group"), "CS") is { Data.Count: 2 } space && objects.Resolve(space.Data[1]) is StreamToken profile
            ? ProfileName.Of(objects.Decode(profile).Span)
            : null;
}
