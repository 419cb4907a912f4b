using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Runs;

/// <summary>What the carriage must cross of a sheet.</summary>
public static class PrintedExtent
{
    /// <summary>Width across the belt and length along the feed of what is printed, mm, each at least 1 mm.</summary>
    /// <remarks>The carriage crosses from the first to the last printed edge. Blanks in lanes are crossed together, from the first lane to the last.</remarks>
    public static SizeMm Of(SheetLayout sheet, BeltPlace belt, Stock stock)
    {
        SizeMm printed = Box(sheet);
        SizeMm lying = belt.Turned ? printed.Turned() : printed;
        double across = stock.Kind == StockKind.Blank && belt.Lanes.Count > 1
            ? belt.Lanes.Max(l => l.StartMm + l.WidthMm) - belt.Lanes.Min(l => l.StartMm)
            : lying.WidthMm;
        return new(Math.Max(1, across), Math.Max(1, lying.HeightMm));
    }

    private static SizeMm Box(SheetLayout sheet) => sheet.Placements.Count == 0
        ? sheet.Sheet
        : new(sheet.Placements.Max(p => p.Place.RightMm) - sheet.Placements.Min(p => p.Place.XMm),
            sheet.Placements.Max(p => p.Place.TopMm) - sheet.Placements.Min(p => p.Place.YMm));
}
