using SkiaSharp;

namespace Laydown.Output.Documents;

/// <summary>A4 pages filled from the top: a margin column for the names of sections, a wide column for what they hold.</summary>
/// <remarks>Points, y downward. Drawn twice, because the foot of each page names the number of pages.</remarks>
internal sealed class PdfPaper
{
    internal const float Width = 595.28f, Height = 841.89f, Left = 40, Right = Width - 40, PageNumberRoom = 56, Column = 138, Foot = Height - 34;
    internal static readonly SKColor Ink = new(0x16, 0x16, 0x16), Quiet = new(0x50, 0x50, 0x50), Faint = new(0x8a, 0x8a, 0x8a), Accent = new(0x00, 0x56, 0x6b), Stop = new(0xa3, 0x14, 0x2a);

    private readonly SKDocument document;
    private readonly string footer;
    private readonly int pages;
    private SKCanvas canvas;

    private PdfPaper(SKDocument document, string footer, int pages)
    {
        this.document = document;
        this.footer = footer;
        this.pages = pages;
        canvas = NewPage();
    }

    /// <summary>Where the next mark goes, points from the top of the page.</summary>
    internal float Y { get; set; }

    /// <summary>Pages begun.</summary>
    internal int Page { get; private set; }

    /// <summary>The page in hand.</summary>
    internal SKCanvas Canvas => canvas;

    /// <summary>Makes a document. The same marks give the same bytes.</summary>
    /// <param name="title">Title of the document.</param>
    /// <param name="author">Who issues it.</param>
    /// <param name="footer">Words at the foot of each page.</param>
    /// <param name="draw">Draws all of it.</param>
    internal static byte[] Make(string title, string author, string footer, Action<PdfPaper> draw)
    {
        (int pages, _) = Once(title, author, footer, 0, draw);
        return Once(title, author, footer, pages, draw).Bytes;
    }

    /// <summary>Makes sure that <paramref name="height"/> fits on the page, or begins the next.</summary>
    internal void Need(float height)
    {
        if (Y + height <= Foot - 12)
            return;
        EndPage();
        canvas = NewPage();
    }

    /// <summary>Text on its base line; <paramref name="align"/> about <paramref name="x"/>. Returns its width.</summary>
    internal float Text(string text, float x, float y, SKTypeface face, float size, SKColor color, SKTextAlign align = SKTextAlign.Left)
    {
        float width = Measure(text, face, size);
        float at = align == SKTextAlign.Right ? x - width : align == SKTextAlign.Center ? x - (width / 2) : x;
        using SKPaint paint = new() { Color = color, IsAntialias = true };
        foreach ((SKTypeface piece, string words) in PageFonts.Pieces(face, text))
        {
            using SKFont font = FontOf(piece, size);
            canvas.DrawText(words, at, y, SKTextAlign.Left, font, paint);
            at += font.MeasureText(words);
        }

        return width;
    }

    /// <summary>Text broken into lines of at most <paramref name="width"/>, from <see cref="Y"/> on; moves <see cref="Y"/> below it.</summary>
    internal void Paragraph(string text, float x, float width, float size, SKTypeface? face = null, SKColor? color = null, float leading = 1.38f)
    {
        face ??= PageFonts.Regular;
        foreach (string line in Lines(text, width, face, size))
        {
            Need(size * leading);
            Text(line, x, Y + size, face, size, color ?? Ink);
            Y += size * leading;
        }
    }

    /// <summary>The lines a text breaks into; a word wider than a line is cut.</summary>
    internal static IReadOnlyList<string> Lines(string text, float width, SKTypeface face, float size)
    {
        List<string> lines = [];
        string line = "";
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(w => Cut(w, width, face, size)))
        {
            string longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && Measure(longer, face, size) > width)
            {
                lines.Add(line);
                line = word;
            }
            else
            {
                line = longer;
            }
        }

        if (line.Length > 0)
            lines.Add(line);
        return lines;
    }

    /// <summary>A line from side to side or between two places.</summary>
    internal void Rule(float y, float thickness = 0.4f, float from = Left, float to = Right, SKColor? color = null) => Line(from, y, to, y, thickness, color);

    /// <summary>A straight line.</summary>
    internal void Line(float x1, float y1, float x2, float y2, float thickness = 0.4f, SKColor? color = null)
    {
        using SKPaint paint = new() { Color = color ?? Ink, StrokeWidth = thickness, Style = SKPaintStyle.Stroke, IsAntialias = true };
        canvas.DrawLine(x1, y1, x2, y2, paint);
    }

    /// <summary>An empty box.</summary>
    internal void Box(float x, float y, float width, float height, float thickness = 0.6f, SKColor? color = null)
    {
        using SKPaint paint = new() { Color = color ?? Ink, StrokeWidth = thickness, Style = SKPaintStyle.Stroke, IsAntialias = true };
        canvas.DrawRect(x, y, width, height, paint);
    }

    /// <summary>A filled bar.</summary>
    internal void Bar(float x, float y, float width, float height, SKColor color)
    {
        using SKPaint paint = new() { Color = color, IsAntialias = true };
        canvas.DrawRect(x, y, width, height, paint);
    }

    /// <summary>A drawing scaled to <paramref name="width"/>, no higher than <paramref name="maxHeight"/> and no larger than <paramref name="maxScale"/>; moves <see cref="Y"/> below it.</summary>
    internal void Draw(Drawing drawing, float x, float width, float maxHeight, float maxScale = float.MaxValue)
    {
        using SKPicture picture = drawing.Picture();
        SKRect box = picture.CullRect;
        float scale = Math.Min(maxScale, Math.Min(width / box.Width, maxHeight / box.Height));
        Need(box.Height * scale);
        canvas.Save();
        canvas.Translate(x, Y);
        canvas.Scale(scale);
        canvas.Translate(-box.Left, -box.Top);
        canvas.DrawPicture(picture);
        canvas.Restore();
        Y += box.Height * scale;
    }

    /// <summary>Width of a text, points.</summary>
    internal static float Measure(string text, SKTypeface face, float size)
    {
        float width = 0;
        foreach ((SKTypeface piece, string words) in PageFonts.Pieces(face, text))
        {
            using SKFont font = FontOf(piece, size);
            width += font.MeasureText(words);
        }

        return width;
    }

    private static (int Pages, byte[] Bytes) Once(string title, string author, string footer, int pages, Action<PdfPaper> draw)
    {
        using MemoryStream stream = new();
        using (SKManagedWStream sink = new(stream))
        using (var document = SKDocument.CreatePdf(sink, new SKDocumentPdfMetadata { Title = title, Author = author, Creator = "Laydown", RasterDpi = 300, EncodingQuality = 101 }))
        {
            PdfPaper paper = new(document, footer, pages);
            draw(paper);
            paper.EndPage();
            document.Close();
            pages = paper.Page;
        }

        return (pages, stream.ToArray());
    }

    // Words that are too long for their place end in three dots.
    private static string Fitting(string words, float wide, SKTypeface face, float size)
    {
        if (Measure(words, face, size) <= wide)
            return words;
        int letters = words.Length;
        while (letters > 1 && Measure(words[..letters].TrimEnd() + "…", face, size) > wide)
            letters--;
        return words[..letters].TrimEnd() + "…";
    }

    private SKCanvas NewPage()
    {
        Page++;
        Y = 36;
        canvas = document.BeginPage(Width, Height);
        return canvas;
    }

    private void EndPage()
    {
        Rule(Foot, 0.4f, color: Faint);
        Text(Fitting(footer, Right - Left - PageNumberRoom, PageFonts.Regular, 7), Left, Foot + 12, PageFonts.Regular, 7, Quiet);
        Text(Invariant($"page {Page} of {pages}"), Right, Foot + 12, PageFonts.Mono, 7, Quiet, SKTextAlign.Right);
        document.EndPage();
    }

    private static IEnumerable<string> Cut(string word, float width, SKTypeface face, float size)
    {
        while (Measure(word, face, size) > width && word.Length > 1)
        {
            int keep = word.Length - 1;
            while (keep > 1 && Measure(word[..keep], face, size) > width)
                keep--;
            if (char.IsHighSurrogate(word[keep - 1]) && keep > 1)
                keep--;
            yield return word[..keep];
            word = word[keep..];
        }

        yield return word;
    }

    private static SKFont FontOf(SKTypeface face, float size) => new(face, size) { Subpixel = true, Hinting = SKFontHinting.None };
}
