using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Raster.Sheets;

namespace Laydown.Output.PressFiles;

/// <summary>A sheet layout in dots of the press.</summary>
/// <param name="Columns">Dots across the scan.</param>
/// <param name="Rows">Dots along the feed.</param>
/// <param name="Pictures">What pieces show.</param>
/// <param name="Pieces">What lies where, as seen with the first printed face up; in the order of the layout.</param>
internal sealed record SheetDots(int Columns, int Rows, IReadOnlyList<PlacedPicture> Pictures, IReadOnlyList<PlacedPiece> Pieces)
{
    /// <summary>The layout of a sheet. Edges fall on the nearest dot.</summary>
    /// <param name="sheet">The layout.</param>
    /// <param name="scanDpi">Dots per inch across.</param>
    /// <param name="feedDpi">Dots per inch along.</param>
    /// <param name="printedOf">Printed size of an item, mm.</param>
    public static SheetDots Of(SheetLayout sheet, int scanDpi, int feedDpi, Func<string, SizeMm> printedOf)
    {
        int rows = SheetPixels.Of(sheet.Sheet.HeightMm, feedDpi), columns = SheetPixels.Of(sheet.Sheet.WidthMm, scanDpi);
        List<PlacedPicture> pictures = [];
        List<PlacedPiece> pieces = [];
        foreach (Placement placement in sheet.Placements)
        {
            string item = SheetPixels.ItemOf(placement.PieceId);
            SizeMm printed = printedOf(item);
            bool turned = placement.Turned && scanDpi != feedDpi;
            (int across, int down) = turned ? (feedDpi, scanDpi) : (scanDpi, feedDpi);
            PlacedPicture picture = new(item, turned, SheetPixels.Of(printed.WidthMm, across), SheetPixels.Of(printed.HeightMm, down), placement.BackUp);
            int number = pictures.IndexOf(picture);
            if (number < 0)
            {
                number = pictures.Count;
                pictures.Add(picture);
            }

            pieces.Add(Placed(placement, printed, picture, number, (across, down), (scanDpi, feedDpi, rows)) with { LeavesBare = sheet.Outlines is not null });
        }

        return new(columns, rows, pictures, pieces);
    }

    /// <summary>Pieces of a layer: mirrored where it is, and the whole sheet seen from behind where it was turned over.</summary>
    /// <param name="mirrored">Whether the layer that a picture comes from is printed mirrored.</param>
    /// <param name="turned">How the sheet was turned over before; null where it was not.</param>
    public IReadOnlyList<PlacedPiece> PiecesOf(Func<PlacedPicture, bool> mirrored, SheetTurn? turned) =>
        [.. Pieces.Select(p => Seen(p with { Mirrored = mirrored(Pictures[p.Picture]) ^ (turned is not null) }, turned))];

    // Seen from behind, left and right are changed: a quarter turn goes the other way and the picture is mirrored once more. Turned head to foot,
    // the sheet lies on its head in addition.
    private PlacedPiece Seen(PlacedPiece piece, SheetTurn? turned) => turned is not { } way ? piece : piece with
    {
        Left = way == SheetTurn.Sideways ? Columns - piece.Left - piece.Width : piece.Left,
        Top = way == SheetTurn.Sideways ? piece.Top : Rows - piece.Top - piece.Height,
        Mirrored = !piece.Mirrored,
        Turn = (QuarterTurn)(((way == SheetTurn.Sideways ? 4 : 6) - (int)piece.Turn) % 4),
    };

    private static PlacedPiece Placed(
        Placement placement, SizeMm printed, PlacedPicture picture, int number, (int Across, int Down) own, (int Scan, int Feed, int Rows) sheet)
    {
        RectMm part = placement.Part ?? new(0, 0, printed.WidthMm, printed.HeightMm);
        int cropLeft = Math.Clamp(SheetPixels.Nearest(part.XMm, own.Across), 0, picture.Columns - 1);
        int cropTop = Math.Clamp(picture.Rows - SheetPixels.Nearest(part.TopMm, own.Down), 0, picture.Rows - 1);
        int width = Math.Min(SheetPixels.Of(part.WidthMm, own.Across), picture.Columns - cropLeft);
        int height = Math.Min(SheetPixels.Of(part.HeightMm, own.Down), picture.Rows - cropTop);
        (int wide, int high) = placement.Turned ? (height, width) : (width, height);
        return new(
            Invariant($"{placement.PieceId} {placement.Copy}"), number, SheetPixels.Nearest(placement.Place.XMm, sheet.Scan),
            sheet.Rows - SheetPixels.Nearest(placement.Place.TopMm, sheet.Feed), wide, high, cropLeft, cropTop,
            (QuarterTurn)placement.QuarterTurns, false);
    }
}
