using Laydown.Colour.Charts;
using Laydown.Formats.PdfWriting;

namespace Laydown.Output.Charts;

/// <summary>Writes the sheets of a chart as a PDF to scale: patches in the chart's own inks, words and marks in its black.</summary>
internal static class ChartPdf
{
    /// <summary>Writes the file; the stream stays open.</summary>
    internal static void Write(Chart chart, IReadOnlyList<ChartSheet> sheets, Stream stream, DateTimeOffset instant)
    {
        PdfFile file = new(stream, "Chart: " + chart.Name, instant, null);
        PdfFont font = ChartWords.AddTo(file);
        foreach ((Chart part, ChartSheet sheet, _) in sheets.SelectMany(s => ChartFolder.PartsOf(chart, s)))
        {
            PdfSpot[] inks = ChartFolder.Spots(part);
            double[] full = [.. inks.Select((_, i) => i == ChartFolder.MarkInk(part) ? 1.0 : 0)];

            // A page is at most 14 400 units wide or high; larger sheets count in larger units.
            double longest = Math.Max(sheet.Size.WidthMm, sheet.Size.HeightMm) / 25.4 * 72;
            PdfPageSize size = new(sheet.Size, new(0, 0, sheet.Size.WidthMm, sheet.Size.HeightMm), null, Math.Max(1,
                Math.Ceiling(longest / 14_400)));
            file.AddPage(size, canvas => Draw(canvas, sheet, inks, full, font));
        }

        file.Close();
    }

    private static void Draw(PdfCanvas canvas, ChartSheet sheet, PdfSpot[] inks, double[] full, PdfFont font)
    {
        foreach (PlacedPatch patch in sheet.Patches.Where(p => p.Patch.Inks.Any(i => i > 0)))
        {
            canvas.FillDeviceN(inks, patch.Patch.Inks);
            canvas.Rectangle(patch.Place);
            canvas.Fill();
        }

        canvas.FillDeviceN(inks, full);
        foreach (Measures.RectMm mark in sheet.Marks)
            canvas.Rectangle(mark);
        canvas.Fill();
        foreach (ChartLabel label in sheet.Labels)
            canvas.Glyphs(font, label.SizeMm, label.Start, ChartWords.Glyphs(label.Text, label.SizeMm));
    }
}
