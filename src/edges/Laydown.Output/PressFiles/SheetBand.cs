using Laydown.Layout.Sheets;

namespace Laydown.Output.PressFiles;

/// <summary>Puts the planes of pieces together to bands of a sheet: pixel after pixel, bare where no piece lies.</summary>
/// <param name="sheet">The layout in pixels.</param>
/// <param name="inks">Inks of the layer.</param>
/// <param name="planesOf">Planes that a piece shows, and whether they are mirrored.</param>
/// <param name="turned">How the whole sheet was turned over: it is seen from its other face then; null where it was not.</param>
internal sealed class SheetBand(SheetPixels sheet, int inks, Func<PlacedPixels, (IPlanes Planes, bool Mirrored)> planesOf, SheetTurn? turned)
{
    private const int PartRows = 32;

    /// <summary>Fills <paramref name="band"/> with rows of the sheet, on all cores.</summary>
    /// <param name="firstRow">First row of the sheet.</param>
    /// <param name="rows">How many.</param>
    /// <param name="band">Takes rows × columns × inks bytes.</param>
    public void Fill(int firstRow, int rows, byte[] band)
    {
        Span<byte> used = band.AsSpan(0, rows * sheet.Columns * inks);
        used.Clear();
        int parts = ((rows - 1) / PartRows) + 1;
        AllCores.Run(
            parts,
            () => new byte[sheet.Columns],
            (part, line) => FillPart(firstRow, part * PartRows, Math.Min(rows, (part + 1) * PartRows), band, line),
            CancellationToken.None);
    }

    private void FillPart(int firstRow, int from, int to, byte[] band, byte[] line)
    {
        int rowBytes = sheet.Columns * inks;
        foreach (PlacedPixels piece in sheet.Pieces)
        {
            // Turned head to foot, the last row comes first.
            bool upended = turned == SheetTurn.HeadToFoot;
            int top = upended ? sheet.Rows - piece.Top - piece.Height : piece.Top;
            int first = Math.Max(firstRow + from, Math.Max(0, top));
            int end = Math.Min(firstRow + to, top + piece.Height);
            for (int row = first; row < end; row++)
                Copy(piece, upended ? sheet.Rows - 1 - row : row, band.AsSpan((row - firstRow) * rowBytes, rowBytes), line);
        }

        for (int row = from; turned == SheetTurn.Sideways && row < to; row++)
            Reverse(band.AsSpan(row * rowBytes, rowBytes));
    }

    private void Copy(PlacedPixels piece, int row, Span<byte> target, byte[] line)
    {
        (IPlanes planes, bool mirrored) = planesOf(piece);
        (int left, int top) = piece.StartIn(piece.Turned ? planes.Rows : planes.Columns, mirrored);
        int skip = Math.Max(0, -piece.Left);
        int first = piece.Left + skip;
        int width = Math.Min(piece.Width - skip, sheet.Columns - first);
        if (width <= 0)
            return;
        Span<byte> part = line.AsSpan(0, width);
        for (int ink = 0; ink < inks; ink++)
        {
            ReadRow(piece, planes, ink, row, (left, top), skip, part);
            int at = (first * inks) + ink;
            foreach (byte value in part)
            {
                target[at] = piece.LeavesBare ? Math.Max(target[at], value) : value;
                at += inks;
            }
        }
    }

    // On its head the last row comes first, from right to left.
    private static void ReadRow(PlacedPixels piece, IPlanes planes, int ink, int row, (int Left, int Top) start, int skip, Span<byte> part)
    {
        if (!piece.OnHead)
        {
            planes.ReadRow(ink, start.Top + row - piece.Top, start.Left + skip, part);
            return;
        }

        planes.ReadRow(ink, start.Top + piece.Height - 1 - (row - piece.Top), start.Left + piece.Width - skip - part.Length, part);
        part.Reverse();
    }

    private void Reverse(Span<byte> row)
    {
        for (int left = 0, right = sheet.Columns - 1; left < right; left++, right--)
        {
            for (int ink = 0; ink < inks; ink++)
                (row[(left * inks) + ink], row[(right * inks) + ink]) = (row[(right * inks) + ink], row[(left * inks) + ink]);
        }
    }
}
