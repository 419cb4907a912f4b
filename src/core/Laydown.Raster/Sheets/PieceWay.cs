using Laydown.Raster.Tiles;

namespace Laydown.Raster.Sheets;

/// <summary>The way between a place on the sheet and the place of the upright picture that is seen there.</summary>
internal static class PieceWay
{
    /// <summary>Where a piece lies on the sheet.</summary>
    public static PixelPart On(PlacedPiece piece) => new(piece.Top, piece.Left, piece.Height, piece.Width);

    /// <summary>The part of the upright picture seen in a part of the sheet that the piece covers.</summary>
    public static PixelPart Seen(PlacedPiece piece, PixelPart onSheet)
    {
        // From the sheet to the piece as it lies, back upright, back from the mirror, to the picture.
        (int y, int x) = (onSheet.Row - piece.Top, onSheet.Column - piece.Left);
        (int rows, int columns) = (onSheet.Rows, onSheet.Columns);
        (int v, int u, int high, int wide) = piece.Turn switch
        {
            QuarterTurn.Left => (x, piece.CropWidth - y - rows, columns, rows),
            QuarterTurn.Right => (piece.CropHeight - x - columns, y, columns, rows),
            QuarterTurn.Half => (piece.CropHeight - y - rows, piece.CropWidth - x - columns, rows, columns),
            _ => (y, x, rows, columns),
        };
        return new(piece.CropTop + v, piece.CropLeft + (piece.Mirrored ? piece.CropWidth - u - wide : u), high, wide);
    }

    /// <summary>Lays a seen part down on the sheet.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="seen">The part of its picture that <see cref="Seen"/> told, upright.</param>
    /// <param name="onSheet">The part of the sheet it goes to.</param>
    /// <param name="sheet">A tile of the sheet that holds that part; its place is set.</param>
    public static void LayDown(PlacedPiece piece, Tile seen, PixelPart onSheet, Tile sheet)
    {
        int row = onSheet.Row - sheet.FirstRow, column = onSheet.Column - sheet.FirstColumn;
        for (int ink = 0; ink < sheet.Inks; ink++)
        {
            if (piece.LeavesBare)
                LayOver(piece, seen, ink, sheet, row, column);
            else if (piece.OnItsSide)
                LayOnSide(piece, seen, ink, sheet, row, column);
            else
                LayAlong(piece, seen, ink, sheet, row, column);
        }
    }

    private static void LayAlong(PlacedPiece piece, Tile seen, int ink, Tile sheet, int row, int column)
    {
        bool onHead = piece.Turn == QuarterTurn.Half;
        for (int y = 0; y < seen.Rows; y++)
        {
            Span<ushort> to = sheet.Row(ink, row + y).Slice(column, seen.Columns);
            seen.Row(ink, onHead ? seen.Rows - 1 - y : y).CopyTo(to);
            if (onHead != piece.Mirrored)
                to.Reverse();
        }
    }

    // Of two pieces each ink is as dense as the denser of both: where one is bare, the other stays.
    private static void LayOver(PlacedPiece piece, Tile seen, int ink, Tile sheet, int row, int column)
    {
        (int high, int wide) = (seen.Rows, seen.Columns);
        for (int v = 0; v < high; v++)
        {
            ReadOnlySpan<ushort> from = seen.Row(ink, v);
            for (int at = 0; at < wide; at++)
            {
                int u = piece.Mirrored ? wide - 1 - at : at;
                (int y, int x) = piece.Turn switch
                {
                    QuarterTurn.Left => (wide - 1 - u, v),
                    QuarterTurn.Right => (u, high - 1 - v),
                    QuarterTurn.Half => (high - 1 - v, wide - 1 - u),
                    _ => (v, u),
                };
                ref ushort to = ref sheet.Row(ink, row + y)[column + x];
                to = Math.Max(to, from[at]);
            }
        }
    }

    // Turned to the left, column u of the mirrored picture becomes row width - 1 - u from the top; turned to the right, row u read from below.
    private static void LayOnSide(PlacedPiece piece, Tile seen, int ink, Tile sheet, int row, int column)
    {
        bool left = piece.Turn == QuarterTurn.Left;
        bool columnsUp = left != piece.Mirrored, rowsBack = !left;
        SideTurn.Run(seen, ink, columnsUp, rowsBack, sheet, row, column);
    }
}
