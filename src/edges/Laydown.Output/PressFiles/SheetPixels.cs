using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Output.PressFiles;

/// <summary>A sheet layout in whole pixels.</summary>
/// <param name="Rows">Pixels down.</param>
/// <param name="Columns">Pixels across.</param>
/// <param name="Pieces">What lies on it.</param>
internal sealed record SheetPixels(int Rows, int Columns, IReadOnlyList<PlacedPixels> Pieces)
{
    /// <summary>Pixels of a length: to the nearest, at least one.</summary>
    public static int Of(double mm, double ppi) => Math.Max(1, Nearest(mm, ppi));

    /// <summary>The layout at a resolution. Edges fall on the nearest pixel; a piece that hangs over by rounding is cut at the sheet's edge.</summary>
    /// <param name="sheet">The layout.</param>
    /// <param name="ppi">Resolution, ppi.</param>
    /// <param name="printedOf">Printed size of the item of that id, mm.</param>
    public static SheetPixels Of(SheetLayout sheet, double ppi, Func<string, SizeMm> printedOf)
    {
        int rows = Of(sheet.Sheet.HeightMm, ppi);
        int columns = Of(sheet.Sheet.WidthMm, ppi);
        return new(rows, columns, [.. sheet.Placements.Select(p => Placed(p, ppi, rows, printedOf) with { LeavesBare = sheet.Outlines is not null, BackUp = p.BackUp })]);
    }

    /// <summary>The item of a piece: its id, or what stands before the panel's number.</summary>
    public static string ItemOf(string pieceId)
    {
        int slash = pieceId.LastIndexOf('/');
        return slash < 0 ? pieceId : pieceId[..slash];
    }

    private static PlacedPixels Placed(Placement placement, double ppi, int sheetRows, Func<string, SizeMm> printedOf)
    {
        string item = ItemOf(placement.PieceId);
        SizeMm printed = printedOf(item);
        (int pictureColumns, int pictureRows) = (Of(printed.WidthMm, ppi), Of(printed.HeightMm, ppi));
        RectMm part = placement.Part ?? new(0, 0, printed.WidthMm, printed.HeightMm);
        int cropLeft = Math.Clamp(Nearest(part.XMm, ppi), 0, pictureColumns - 1);
        int cropTop = Math.Clamp(pictureRows - Nearest(part.TopMm, ppi), 0, pictureRows - 1);
        int width = Math.Min(Of(part.WidthMm, ppi), pictureColumns - cropLeft);
        int height = Math.Min(Of(part.HeightMm, ppi), pictureRows - cropTop);
        int left = Nearest(placement.Place.XMm, ppi);
        int top = sheetRows - Nearest(placement.Place.TopMm, ppi);
        return placement.Turned
            ? new(item, left, top, height, width, true, cropLeft, cropTop, placement.QuarterTurns >= 2)
            : new(item, left, top, width, height, false, cropLeft, cropTop, placement.QuarterTurns >= 2);
    }

    /// <summary>The nearest pixel edge to a place.</summary>
    public static int Nearest(double mm, double ppi) => (int)Math.Round(mm * ppi / 25.4, MidpointRounding.AwayFromZero);
}
