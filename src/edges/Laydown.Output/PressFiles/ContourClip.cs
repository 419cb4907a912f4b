using Laydown.Geometry.Shapes;
using Laydown.Raster.Masks;
using Laydown.Shop.Layout;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Output.PressFiles;

/// <summary>Keeps the picture of a piece within its contour, so that pieces that lie within each other's rectangles leave each other alone.</summary>
internal static class ContourClip
{
    /// <summary>The lines ink stays within, for the upright picture of an item; null where its run is laid out by rectangles.</summary>
    /// <param name="context">The run.</param>
    /// <param name="item">The item.</param>
    /// <param name="rows">Rows of the picture.</param>
    /// <param name="columns">Columns of the picture.</param>
    public static WithinRings? Of(RunContext context, ItemRecord item, int rows, int columns)
    {
        bool nested = context.Run.Sheets.Any(s => s.Outlines?.Any(o => SheetPixels.ItemOf(o.PieceId) == item.Item.Id) ?? false);
        if (!nested || ItemContours.Of(item)?.Offset(ItemContours.KeptBleedMm) is not { } kept)
            return null;
        (double across, double down) = (columns / item.Item.Printed.WidthMm, rows / item.Item.Printed.HeightMm);
        return new([.. kept.OuterRings().Concat(kept.Holes()).Select(r => Pixels(r, across, down, rows))], rows);
    }

    private static IReadOnlyList<(double Column, double Row)> Pixels(Outline ring, double across, double down, int rows) =>
        [.. ring.Points.Select(p => (p.XMm * across, rows - (p.YMm * down)))];
}
