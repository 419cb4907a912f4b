namespace Laydown.Raster.Sheets;

/// <summary>A rectangle of whole pixels.</summary>
/// <param name="Row">First row.</param>
/// <param name="Column">First column.</param>
/// <param name="Rows">Rows; nothing where below 1.</param>
/// <param name="Columns">Columns; nothing where below 1.</param>
internal readonly record struct PixelPart(int Row, int Column, int Rows, int Columns)
{
    /// <summary>Whether it holds nothing.</summary>
    public bool IsEmpty => Rows < 1 || Columns < 1;

    /// <summary>What both hold.</summary>
    public PixelPart And(PixelPart other)
    {
        int row = Math.Max(Row, other.Row), column = Math.Max(Column, other.Column);
        return new(row, column, Math.Min(Row + Rows, other.Row + other.Rows) - row, Math.Min(Column + Columns, other.Column + other.Columns) - column);
    }

    /// <summary>Larger by so many pixels on each side.</summary>
    public PixelPart Grown(int pixels) => new(Row - pixels, Column - pixels, Rows + (2 * pixels), Columns + (2 * pixels));
}
