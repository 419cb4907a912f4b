using Laydown.Artwork.Pages;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Plan.Runs;
using Laydown.Shop.Layout;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Build;

/// <summary>What planning must know of an item's artwork, at the size it is printed.</summary>
internal static class ReadyItems
{
    /// <summary>The item with its smallest text and narrowest bar-code module at finished size.</summary>
    public static ReadyItem Of(Item item, string orderId, ArtworkFile? artwork)
    {
        List<ArtworkPage> pages = [.. (artwork?.Pages ?? []).Take(item.Build.Pictures)];
        return new(
            item,
            orderId,
            Least(pages.SelectMany(p => p.SmallestTexts.Select(t => t.SizePt * Enlargement(p, item)))),
            Least(pages.SelectMany(p => p.Codes.Select(c => c.ModuleMm * Enlargement(p, item)))))
        { SeamKeepOuts = SeamCosts.Of(item, pages) };
    }

    /// <summary>Length of the contour cut of one piece at finished size, mm; null where the file gives none or none is wanted.</summary>
    public static double? CutLengthMm(ItemRecord record)
    {
        if (record.Item.Finishing.All(f => f.Kind != FinishingKind.CutContour) || record.Artwork?.Pages[0] is not { CutPaths.Count: > 0 } page)
            return null;
        return page.CutPaths.Sum(LengthMm) * Enlargement(page, record.Item);
    }

    // The page's trim is scaled to the finished size; where the two differ in shape, the smaller scale is the safe one for text and codes.
    private static double Enlargement(ArtworkPage page, Item item) => page.TrimMm is { WidthMm: > 0, HeightMm: > 0 } trim
        ? Math.Min(item.WidthMm / trim.WidthMm, item.HeightMm / trim.HeightMm)
        : 1;

    private static double? Least(IEnumerable<double> values) => values.Where(v => v > 0).Select(v => (double?)v).DefaultIfEmpty(null).Min();

    private static double LengthMm(CutPath path)
    {
        double sum = path.Points.Zip(path.Points.Skip(1), Distance).Sum();
        return path.Closed ? sum + Distance(path.Points[^1], path.Points[0]) : sum;
    }

    private static double Distance(PointMm one, PointMm other) => Math.Sqrt(Square(one.XMm - other.XMm) + Square(one.YMm - other.YMm));

    private static double Square(double value) => value * value;
}
