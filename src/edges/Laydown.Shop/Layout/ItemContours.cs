using Laydown.Artwork.Pages;
using Laydown.Geometry.Outlines;
using Laydown.Geometry.Shapes;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Layout;

/// <summary>The contours that items are cut to, from what was measured of their files.</summary>
public static class ItemContours
{
    /// <summary>What is printed beyond a contour when pieces lie within each other's rectangles, mm: just under half the gap between two.</summary>
    public const double KeptBleedMm = 2.4;

    /// <summary>The area a piece of the item takes, mm of its printed picture from the lower left corner; null where it is no single sound contour.</summary>
    /// <remarks>Such an item is laid out as the rectangle it is printed in, and its lines are cut as they are.</remarks>
    public static Shape? Of(ItemRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        Item item = record.Item;
        if (item.Finishing.All(f => f.Kind != FinishingKind.CutContour) || record.Artwork?.Pages.FirstOrDefault(p => p.CutPaths.Count > 0) is not { } page)
            return null;
        RawContour[] lines = [.. page.CutPaths.Where(IsThrough).Select((c, i) => new RawContour(
            Invariant($"cut path {i + 1}"), [.. c.Points.Select(p => ToPicture(p, page, item))], c.Closed))];
        Reading<MendedOutlines> mended = lines.Length == 0 ? Reading.Refused<MendedOutlines>(NoLine(item)) : OutlineMending.Nested(item.Artwork, lines, new());
        return mended is { IsTaken: true, Value: { Shapes: [{ Area: var area }], Findings: var findings } } && !findings.Any(f => f.Code == "outline-far-away")
            && new RectMm(0, 0, item.Printed.WidthMm, item.Printed.HeightMm).Holds(area.Bounds, 0.5)
            ? area
            : null;
    }

    private static InputFault NoLine(Item item) => new(item.Artwork, null, "cut paths", "none that cuts through", "a closed line");

    private static bool IsThrough(CutPath path) => path.ProcessStep is not ("PartialCutting" or "Creasing" or "Drilling");

    // The page's trim box becomes the finished piece.
    private static PointMm ToPicture(PointMm onPage, ArtworkPage page, Item item)
    {
        double across = page.TrimMm.WidthMm > 0 ? item.WidthMm / page.TrimMm.WidthMm : 1;
        double up = page.TrimMm.HeightMm > 0 ? item.HeightMm / page.TrimMm.HeightMm : 1;
        return new(item.BleedMm + ((onPage.XMm - page.TrimMm.XMm) * across), item.BleedMm + ((onPage.YMm - page.TrimMm.YMm) * up));
    }
}
