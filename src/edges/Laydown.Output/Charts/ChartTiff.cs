using Laydown.Colour.Charts;
using Laydown.Formats.TiffWriting;
using Laydown.Measures;
using SkiaSharp;

namespace Laydown.Output.Charts;

/// <summary>Writes a sheet of a chart as contone TIFF to scale, band by band: patches and marks to the nearest pixel, without soft
/// edges.</summary>
internal static class ChartTiff
{
    /// <summary>Writes the file; the stream stays open.</summary>
    internal static void Write(Chart chart, ChartSheet sheet, Stream stream, double ppi, DateTimeOffset instant, CancellationToken cancel)
    {
        int columns = Pixels(sheet.Size.WidthMm, ppi), rows = Pixels(sheet.Size.HeightMm, ppi), inks = chart.InkNames.Count;
        ContoneHeader header = new(
            columns, rows, ppi, [.. chart.InkNames.Select(SevenBit)], Invariant($"Chart: {chart.Name}, sheet {sheet.Page}"), instant);
        using ContoneTiffWriter writer = new(stream, "chart", header);
        int mark = ChartFolder.MarkInk(chart);
        byte[] full = new byte[inks];
        full[mark] = 255;
        byte[] band = new byte[checked(writer.BandRows * header.RowBytes)];
        for (int top = 0; top < rows; top += writer.BandRows)
        {
            cancel.ThrowIfCancellationRequested();
            Band piece = new(band, columns, inks, top, Math.Min(writer.BandRows, rows - top), sheet.Size.HeightMm, ppi);
            Array.Clear(band);
            foreach (PlacedPatch patch in sheet.Patches)
                Fill(piece, patch.Place, [.. patch.Patch.Inks.Select(i => (byte)Math.Round(i * 255))]);
            foreach (RectMm rect in sheet.Marks)
                Fill(piece, rect, full);
            Words(piece, sheet.Labels, mark);
            writer.WriteBand(band, piece.Rows);
        }

        writer.Finish();
    }

    private static int Pixels(double mm, double ppi) => Math.Max(1, (int)Math.Round(mm / 25.4 * ppi));

    private static string SevenBit(string name) => string.Concat(name.Select(c => c is >= ' ' and <= '~' ? c : '?'));

    private static void Fill(Band band, RectMm place, byte[] pixel)
    {
        int left = band.X(place.XMm), right = Math.Min(band.Columns, band.X(place.RightMm));
        int top = Math.Max(0, band.Y(place.TopMm)), bottom = Math.Min(band.Rows, band.Y(place.YMm));
        for (int row = top; row < bottom; row++)
        {
            for (int x = left; x < right; x++)
                pixel.CopyTo(band.Bytes, ((row * band.Columns) + x) * band.Inks);
        }
    }

    // Words drawn as grey over the band, then put into the ink of the marks.
    private static void Words(Band band, IReadOnlyList<ChartLabel> labels, int mark)
    {
        ChartLabel[] here = [.. labels.Where(l => band.Y(l.Start.YMm - l.SizeMm) >= 0 && band.Y(l.Start.YMm
            + (1.2 * l.SizeMm)) < band.Rows)];
        if (here.Length == 0)
            return;
        using SKBitmap bitmap = new(new SKImageInfo(band.Columns, band.Rows, SKColorType.Gray8, SKAlphaType.Opaque));
        using SKCanvas canvas = new(bitmap);
        canvas.Clear(SKColors.Black);
        using SKPaint paint = new() { Color = SKColors.White, IsAntialias = true };
        foreach (ChartLabel label in here)
        {
            using SKFont font = new(ChartWords.Face, (float)(label.SizeMm / 25.4 * band.Ppi))
            {
                Subpixel = true,
                Hinting = SKFontHinting.None
            };
            float y = (float)(((band.SheetMm - label.Start.YMm) / 25.4 * band.Ppi) - band.Top);
            canvas.DrawText(label.Text, (float)(label.Start.XMm / 25.4 * band.Ppi), y, SKTextAlign.Left, font, paint);
        }

        canvas.Flush();
        ReadOnlySpan<byte> grey = bitmap.GetPixelSpan();
        for (int row = 0; row < band.Rows; row++)
        {
            for (int x = 0; x < band.Columns; x++)
            {
                if (grey[(row * bitmap.RowBytes) + x] is var tone and > 0)
                    band.Bytes[(((row * band.Columns) + x) * band.Inks) + mark] = tone;
            }
        }
    }

    private sealed record Band(byte[] Bytes, int Columns, int Inks, int Top, int Rows, double SheetMm, double Ppi)
    {
        internal int X(double mm) => Math.Max(0, (int)Math.Round(mm / 25.4 * Ppi));

        internal int Y(double mm) => (int)Math.Round((SheetMm - mm) / 25.4 * Ppi) - Top;
    }
}
