using Laydown.Raster.Screens;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Sheets;

/// <summary>Makes bands of a sheet, one after the other. One for each worker; what it holds is used again.</summary>
internal sealed class SheetWorker
{
    private readonly SheetJob job;
    private readonly int tileColumns;
    private readonly PictureTiles pictures;
    private readonly Tile sheet = new(1, 1, 1);
    private readonly DotRows dots;
    private readonly DotTotals totals;
    private readonly PixelPart[] on;

    public SheetWorker(SheetJob job, int bandRows, int tileColumns, PictureTiles pictures)
    {
        this.job = job;
        this.tileColumns = tileColumns;
        this.pictures = pictures;
        on = [.. job.Pieces.Select(p => PieceWay.On(p).And(new(0, 0, job.Rows, job.Columns)))];
        dots = new(job.Screen.Inks, Math.Min(bandRows, job.Rows), job.Columns, job.Screen.BitsPerDot);
        totals = new(job.Screen.Inks, 1 << job.Screen.BitsPerDot);
    }

    /// <summary>Makes one band.</summary>
    /// <returns>A band that holds until the next call.</returns>
    public DotBand Make(int number, int firstRow, int rows, CancellationToken cancellation)
    {
        dots.Clear();
        totals.Clear();
        PixelPart band = new(firstRow, 0, rows, job.Columns);
        int[] there = [.. Enumerable.Range(0, job.Pieces.Count).Where(i => !on[i].And(band.Grown(job.Screen.ReachPixels)).IsEmpty)];
        for (int column = 0; column < job.Columns; column += tileColumns)
        {
            cancellation.ThrowIfCancellationRequested();
            int columns = Math.Min(tileColumns, job.Columns - column);
            if (Compose(there, new PixelPart(firstRow, column, rows, columns).Grown(job.Screen.ReachPixels)) is { } tile)
                job.Screen.Run(tile, rows, columns, dots, column);
        }

        Count(there, band);
        return new(number, firstRow, rows, dots, totals);
    }

    // Laydown of a part of the sheet; nothing where no piece lies.
    private Tile? Compose(int[] there, PixelPart part)
    {
        int found = 0, last = 0;
        foreach (int i in there)
        {
            if (!on[i].And(part).IsEmpty)
                (found, last) = (found + 1, i);
        }

        if (found == 0)
            return null;

        // The commonest place of all: in the middle of one upright piece.
        PlacedPiece piece = job.Pieces[last];
        if (found == 1 && piece is { Turn: QuarterTurn.None, Mirrored: false } && on[last].And(part) == part)
        {
            Tile only = pictures.Make(piece.Picture, PieceWay.Seen(piece, part));
            only.PlaceAt(part.Row, part.Column);
            return only;
        }

        LayDownAll(there, part);
        return sheet;
    }

    private void LayDownAll(int[] there, PixelPart part)
    {
        sheet.Shape(job.Screen.Inks, part.Rows, part.Columns);
        sheet.PlaceAt(part.Row, part.Column);
        sheet.Clear();
        foreach (int i in there)
        {
            PlacedPiece piece = job.Pieces[i];
            PixelPart onSheet = on[i].And(part);
            if (!onSheet.IsEmpty)
                PieceWay.LayDown(piece, pictures.Make(piece.Picture, PieceWay.Seen(piece, onSheet)), onSheet, sheet);
        }
    }

    private void Count(int[] there, PixelPart band)
    {
        for (int ink = 0; ink < totals.Inks; ink++)
        {
            for (int row = 0; row < band.Rows; row++)
                DotCounts.Add(dots.Row(ink, row), job.Screen.BitsPerDot, 0, job.Columns, totals.Whole(ink));
            foreach (int i in there)
            {
                PixelPart part = on[i].And(band);
                if (part.IsEmpty)
                    continue;
                Span<long> counts = totals.Piece(i, ink);
                for (int row = part.Row - band.Row; row < part.Row - band.Row + part.Rows; row++)
                    DotCounts.Add(dots.Row(ink, row), job.Screen.BitsPerDot, part.Column, part.Columns, counts);
            }
        }
    }
}
