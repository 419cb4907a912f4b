using Laydown.Raster.Scaling;
using Laydown.Raster.Sheets;
using Laydown.Raster.Tiles;

namespace Laydown.Core.Tests.Raster.Sheets;

/// <summary>Puts a sheet together the long way: whole pictures, mirrored and turned pixel by pixel, laid down one after the other.</summary>
internal static class SheetByHand
{
    public static ushort[,,] Laydown(SheetJob job)
    {
        ushort[,,] sheet = new ushort[job.Screen.Inks, job.Rows, job.Columns];
        Tile[] whole = [.. job.Pictures.Select(Whole)];
        foreach (PlacedPiece piece in job.Pieces)
        {
            for (int ink = 0; ink < job.Screen.Inks; ink++)
                LayDown(piece, Lying(piece, Cut(piece, whole[piece.Picture], ink)), ink, sheet);
        }

        return sheet;
    }

    /// <summary>Dots that <see cref="NearScreen"/> makes of it.</summary>
    public static bool[,,] Dots(SheetJob job)
    {
        ushort[,,] sheet = Laydown(job);
        int reach = job.Screen.ReachPixels;
        bool[,,] dots = new bool[job.Screen.Inks, job.Rows, job.Columns];
        for (int ink = 0; ink < job.Screen.Inks; ink++)
        {
            for (int y = 0; y < job.Rows; y++)
            {
                for (int x = 0; x < job.Columns; x++)
                {
                    int other = y + reach < job.Rows && x + reach < job.Columns ? sheet[ink, y + reach, x + reach] : 0;
                    dots[ink, y, x] = sheet[ink, y, x] + other > Tile.Full;
                }
            }
        }

        return dots;
    }

    private static Tile Whole(SheetPicture picture)
    {
        Kept source = Kept.Of(picture.AtSource, picture.Plates);
        Kept scaled = source;
        if (picture.Plates.Rows != picture.Rows || picture.Plates.Columns != picture.Columns)
        {
            AxisScale rows = new(picture.Plates.Rows, picture.Rows, picture.Kernel), columns = new(picture.Plates.Columns, picture.Columns, picture.Kernel);
            (int row, int high) = rows.SourceRange(0, picture.Rows);
            (int column, int wide) = columns.SourceRange(0, picture.Columns);
            Tile from = source.Part(row, column, high, wide), to = new(source.Inks, picture.Rows, picture.Columns);
            new Scaler(rows, columns).Run(from, to);
            scaled = new(to);
        }

        return Kept.Of(picture.AtPress, scaled).Whole;
    }

    private static ushort[,] Cut(PlacedPiece piece, Tile picture, int ink)
    {
        bool side = piece.Turn is QuarterTurn.Left or QuarterTurn.Right;
        ushort[,] cut = new ushort[side ? piece.Width : piece.Height, side ? piece.Height : piece.Width];
        for (int y = 0; y < cut.GetLength(0); y++)
        {
            for (int x = 0; x < cut.GetLength(1); x++)
                cut[y, x] = picture.Row(ink, piece.CropTop + y)[piece.CropLeft + x];
        }

        return cut;
    }

    private static ushort[,] Lying(PlacedPiece piece, ushort[,] cut)
    {
        if (piece.Mirrored)
            cut = Made(cut.GetLength(0), cut.GetLength(1), (y, x) => cut[y, cut.GetLength(1) - 1 - x]);
        for (int quarter = 0; quarter < (int)piece.Turn; quarter++)
            cut = ToTheLeft(cut);
        return cut;
    }

    // By 90° counter-clockwise: the last column becomes the first row.
    private static ushort[,] ToTheLeft(ushort[,] from) =>
        Made(from.GetLength(1), from.GetLength(0), (y, x) => from[x, from.GetLength(1) - 1 - y]);

    private static ushort[,] Made(int rows, int columns, Func<int, int, ushort> value)
    {
        ushort[,] made = new ushort[rows, columns];
        for (int y = 0; y < rows; y++)
        {
            for (int x = 0; x < columns; x++)
                made[y, x] = value(y, x);
        }

        return made;
    }

    private static void LayDown(PlacedPiece piece, ushort[,] lying, int ink, ushort[,,] sheet)
    {
        for (int y = 0; y < piece.Height; y++)
        {
            for (int x = 0; x < piece.Width; x++)
            {
                if (piece.Top + y >= 0 && piece.Top + y < sheet.GetLength(1) && piece.Left + x >= 0 && piece.Left + x < sheet.GetLength(2))
                    sheet[ink, piece.Top + y, piece.Left + x] = lying[y, x];
            }
        }
    }

    private sealed class Kept(Tile tile) : ITileSource, ITileSink
    {
        public int Inks => tile.Inks;

        public int Rows => tile.Rows;

        public int Columns => tile.Columns;

        public Tile Whole => tile;

        public static Kept Of(IReadOnlyList<ITileStage> stages, ITileSource source)
        {
            Kept kept = new(new(stages.Aggregate(source.Inks, (inks, s) => s.TargetInks(inks)), source.Rows, source.Columns));
            if (stages.Count > 0)
                new StageChain(stages).Run(source, source.Rows, source.Columns, kept, CancellationToken.None);
            else
                kept.Read(source);
            return kept;
        }

        public void ReadRow(int ink, int row, int firstColumn, Span<ushort> into) => tile.Row(ink, row).Slice(firstColumn, into.Length).CopyTo(into);

        public void Take(int firstRow, int firstColumn, Tile part)
        {
            for (int ink = 0; ink < part.Inks; ink++)
            {
                for (int row = 0; row < part.Rows; row++)
                    part.Row(ink, row).CopyTo(tile.Row(ink, firstRow + row)[firstColumn..]);
            }
        }

        public Tile Part(int row, int column, int rows, int columns)
        {
            Tile part = new(Inks, rows, columns);
            part.PlaceAt(row, column);
            for (int ink = 0; ink < Inks; ink++)
            {
                for (int y = 0; y < rows; y++)
                {
                    for (int x = 0; x < columns; x++)
                        part.Row(ink, y)[x] = tile.Row(ink, Math.Clamp(row + y, 0, Rows - 1))[Math.Clamp(column + x, 0, Columns - 1)];
                }
            }

            return part;
        }

        private void Read(ITileSource source)
        {
            for (int ink = 0; ink < Inks; ink++)
            {
                for (int row = 0; row < Rows; row++)
                    source.ReadRow(ink, row, 0, tile.Row(ink, row));
            }
        }
    }
}
