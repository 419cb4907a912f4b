using Laydown.Artwork.Pages;
using Laydown.Press.Machines;
using Laydown.Shop.Orders;

namespace Laydown.Output.PressFiles;

/// <summary>The resolution a page is rendered at for dots: what it holds, never more than the press prints.</summary>
internal static class PlateResolution
{
    /// <summary>Most pixels of one page, all its plates counted once: a board of 1220 × 2440 mm at 720 ppi.</summary>
    private const double MostPixels = 2.4e9;

    /// <summary>Edges of pictures on a page are drawn this much finer than their pixels; common practice, no source.</summary>
    private const double EdgesFiner = 2;

    private const double LeastPpi = 72;

    /// <summary>
    /// An image at its own pixels; a page with text, lines or codes, and every drawing, at the press's higher dpi; a page of pictures alone at
    /// twice the finest picture's. All capped at the press's dpi and by a budget of pixels.
    /// </summary>
    public static double Of(Mode mode, ItemRecord item, int page)
    {
        double press = Math.Max(mode.ScanDpi, mode.FeedDpi);
        ArtworkPage? measured = item.Artwork?.Pages.FirstOrDefault(p => p.Number == page);
        double wanted = measured is null ? press : Wanted(item, measured, press);
        double areaInch2 = item.Item.Printed.AreaM2 * 1e6 / (25.4 * 25.4);
        return Math.Min(Math.Clamp(wanted, Math.Min(LeastPpi, press), press), Math.Sqrt(MostPixels / Math.Max(1e-9, areaInch2)));
    }

    private static double Wanted(ItemRecord item, ArtworkPage page, double press)
    {
        if (page is { PixelWidth: > 0, PixelHeight: > 0 })
            return Math.Max(page.PixelWidth * 25.4 / item.Item.WidthMm, page.PixelHeight * 25.4 / item.Item.HeightMm);
        bool edges = page.Fonts.Count + page.SmallestTexts.Count + page.ThinnestLines.Count + page.Codes.Count > 0;
        if (edges || page.Images.Count == 0 || item.Artwork?.Kind == ArtworkKind.Svg)
            return press;
        double scale = page.TrimMm.WidthMm > 0 ? item.Item.WidthMm / page.TrimMm.WidthMm : 1;
        return page.Images.Max(i => i.EffectivePpi) / scale * EdgesFiner;
    }
}
