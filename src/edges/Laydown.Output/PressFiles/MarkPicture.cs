using Laydown.Layout.Marks;
using Laydown.Output.Documents;
using SkiaSharp;

namespace Laydown.Output.PressFiles;

/// <summary>Draws a mark into pixels: 0 bare, 255 full.</summary>
internal static class MarkPicture
{
    private const float RingMm = 0.4f;

    /// <summary>The mark in its box, row by row from the top. Codes stand on whole pixels, so that their modules stay alike.</summary>
    /// <param name="mark">The mark.</param>
    /// <param name="columns">Pixels across the box.</param>
    /// <param name="rows">Pixels down the box.</param>
    public static byte[] Draw(SheetMark mark, int columns, int rows)
    {
        if (mark.Kind == MarkKind.Code && Code(QrMatrix.Of(mark.Text), columns, rows) is { } code)
            return code;
        using SKBitmap bitmap = new(new SKImageInfo(columns, rows, SKColorType.Gray8, SKAlphaType.Opaque));
        using SKCanvas canvas = new(bitmap);
        canvas.Clear(SKColors.Black);
        canvas.Scale((float)(columns / mark.Box.WidthMm), (float)(rows / mark.Box.HeightMm));
        Draw(canvas, mark);
        canvas.Flush();
        byte[] pixels = new byte[columns * rows];
        for (int row = 0; row < rows; row++)
            bitmap.GetPixelSpan().Slice(row * bitmap.RowBytes, columns).CopyTo(pixels.AsSpan(row * columns));
        return pixels;
    }

    // Millimetres, y downward.
    private static void Draw(SKCanvas canvas, SheetMark mark)
    {
        float w = (float)mark.Box.WidthMm, h = (float)mark.Box.HeightMm, ink = (float)mark.InkMm;
        using SKPaint paint = new() { Color = SKColors.White, IsAntialias = true };
        switch (mark.Kind)
        {
            case MarkKind.Disc:
                canvas.DrawCircle(w / 2, h / 2, ink / 2, paint);
                break;
            case MarkKind.FaceCross:
                (paint.Style, paint.StrokeWidth) = (SKPaintStyle.Stroke, RingMm);
                canvas.DrawCircle(w / 2, h / 2, (ink / 3) - (RingMm / 2), paint);
                canvas.DrawLine((w - ink) / 2, h / 2, (w + ink) / 2, h / 2, paint);
                canvas.DrawLine(w / 2, (h - ink) / 2, w / 2, (h + ink) / 2, paint);
                break;
            case MarkKind.Label:
                Words(canvas, mark, w, h, paint);
                break;
            case MarkKind.Code:
                Code(canvas, QrMatrix.Of(mark.Text), w, h, paint);
                break;
            default:
                canvas.DrawRect(mark.Upright ? new((w - ink) / 2, 0, (w + ink) / 2, h) : new SKRect(0, (h - ink) / 2, w, (h + ink) / 2), paint);
                break;
        }
    }

    // One line, as large as the box takes; what is too long is made narrower by leaving the end out.
    private static void Words(SKCanvas canvas, SheetMark mark, float w, float h, SKPaint paint)
    {
        (float length, float high) = mark.Upright ? (h, w) : (w, h);
        if (mark.Upright)
        {
            canvas.Translate(0, h);
            canvas.RotateDegrees(-90);
        }

        float size = high / 1.25f;
        string text = mark.Text;
        while (text.Length > 4 && PdfPaper.Measure(text, PageFonts.Mono, size) > length)
            text = text[..^2].TrimEnd() + "…";
        float at = 0;
        foreach ((SKTypeface face, string piece) in PageFonts.Pieces(PageFonts.Mono, text))
        {
            using SKFont font = new(face, size) { Subpixel = true, Hinting = SKFontHinting.None };
            canvas.DrawText(piece, at, high * 0.72f, SKTextAlign.Left, font, paint);
            at += font.MeasureText(piece);
        }
    }

    private static byte[]? Code(QrMatrix code, int columns, int rows)
    {
        int side = code.Side + 8, across = columns / side, down = rows / side;
        if (across < 1 || down < 1)
            return null;
        byte[] pixels = new byte[columns * rows];
        int left = (columns - (code.Side * across)) / 2, top = (rows - (code.Side * down)) / 2;
        foreach ((int x, int y, int length) in code.Bars())
        {
            for (int row = 0; row < down; row++)
                pixels.AsSpan(((top + (y * down) + row) * columns) + left + (x * across), length * across).Fill(255);
        }

        return pixels;
    }

    private static void Code(SKCanvas canvas, QrMatrix code, float w, float h, SKPaint paint)
    {
        float across = w / (code.Side + 8), down = h / (code.Side + 8);
        foreach ((int x, int y, int length) in code.Bars())
            canvas.DrawRect((x + 4) * across, (y + 4) * down, length * across, down, paint);
    }
}
