using Laydown.Raster.Masks;
using Laydown.Raster.Separation;
using Laydown.Raster.Tiles;
using Microsoft.Win32.SafeHandles;

namespace Laydown.Output.PressFiles;

/// <summary>Laydown of one layer of one item in a raw scratch file: ink after ink, row after row, 8 bits.</summary>
internal sealed class PlaneFile : IPlanes, ITileSink, IDisposable
{
    private const int TurnBlock = 512;

    private readonly string path;
    private readonly SafeFileHandle file;
    private readonly double limitPercent;
    private readonly bool mirrored;
    private readonly WithinRings? within;

    /// <summary>Makes the file at its full length, so that a full disk shows at once.</summary>
    /// <param name="path">Where; replaced when it exists.</param>
    /// <param name="inks">Planes.</param>
    /// <param name="rows">Pixels down.</param>
    /// <param name="columns">Pixels across.</param>
    /// <param name="limitPercent">Largest sum at one pixel, percent of one full ink; kept when values are rounded to 8 bits.</param>
    /// <param name="mirrored">Whether rows are written from right to left.</param>
    /// <param name="within">Lines of the picture that ink stays within; null for all of it.</param>
    public PlaneFile(string path, int inks, int rows, int columns, double limitPercent, bool mirrored, WithinRings? within = null)
    {
        this.path = path;
        this.limitPercent = limitPercent;
        this.mirrored = mirrored;
        this.within = within;
        Inks = inks;
        Rows = rows;
        Columns = columns;
        file = File.OpenHandle(path, FileMode.Create, FileAccess.ReadWrite, FileShare.Read, FileOptions.None, (long)inks * rows * columns);
    }

    public int Inks { get; }

    public int Rows { get; }

    public int Columns { get; }

    /// <summary>Takes whole bands of 16-bit values, from several threads.</summary>
    public void Take(int firstRow, int firstColumn, Tile tile)
    {
        byte[] bytes = new byte[tile.Inks * tile.Columns];
        for (int row = 0; row < tile.Rows; row++)
        {
            EightBits.Narrow(tile, row, limitPercent, bytes);
            for (int ink = 0; ink < tile.Inks; ink++)
            {
                Span<byte> line = bytes.AsSpan(ink * tile.Columns, tile.Columns);
                within?.Clear(firstRow + row, firstColumn, line);
                if (mirrored)
                    line.Reverse();
                int column = mirrored ? Columns - firstColumn - tile.Columns : firstColumn;
                RandomAccess.Write(file, line, Offset(ink, firstRow + row, column));
            }
        }
    }

    public void ReadRow(int ink, int row, int firstColumn, Span<byte> into)
    {
        if (RandomAccess.Read(file, into, Offset(ink, row, firstColumn)) != into.Length)
            throw new InvalidDataException("planes: the scratch file is shorter than its picture");
    }

    /// <summary>The same planes turned by 90° counter-clockwise, in another file.</summary>
    public PlaneFile Turned(string turnedPath, CancellationToken cancellation)
    {
        PlaneFile turned = new(turnedPath, Inks, Columns, Rows, limitPercent, mirrored: false);
        int blocks = ((Columns - 1) / TurnBlock) + 1;
        AllCores.Run(
            Inks * blocks,
            () => new byte[TurnBlock],
            (number, block) =>
            {
                int first = number % blocks * TurnBlock;
                TurnColumns(turned, number / blocks, first, block.AsSpan(0, Math.Min(TurnBlock, Columns - first)));
            },
            cancellation);
        return turned;
    }

    /// <summary>Closes and removes the file.</summary>
    public void Dispose()
    {
        file.Dispose();
        File.Delete(path);
    }

    private void TurnColumns(PlaneFile turned, int ink, int first, Span<byte> segment)
    {
        // Column x becomes row Columns − 1 − x; the rows of the block lie together, last column first.
        byte[] rows = new byte[segment.Length * Rows];
        for (int row = 0; row < Rows; row++)
        {
            ReadRow(ink, row, first, segment);
            for (int x = 0; x < segment.Length; x++)
                rows[((segment.Length - 1 - x) * Rows) + row] = segment[x];
        }

        RandomAccess.Write(turned.file, rows, turned.Offset(ink, Columns - first - segment.Length, 0));
    }

    private long Offset(int ink, int row, int column) => ((((long)ink * Rows) + row) * Columns) + column;
}
