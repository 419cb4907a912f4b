namespace Laydown.Output.Pyramids;

/// <summary>Which tiles a pyramid has and in which order their places stand.</summary>
/// <param name="Shape">Sizes of the picture.</param>
/// <param name="Inks">Inks.</param>
/// <param name="From">Lowest level kept.</param>
/// <param name="Levels">Number of levels of the picture; the last one is always kept.</param>
internal sealed record PyramidLayout(LevelShape Shape, int Inks, int From, int Levels)
{
    /// <summary>Places of all tiles.</summary>
    public int PlaceCount => FirstOf(Levels);

    /// <summary>Tiles of a level across.</summary>
    public int Across(int level) => ((Shape.ColumnsAt(level) - 1) / PyramidFile.TilePx) + 1;

    /// <summary>Tiles of a level down.</summary>
    public int Down(int level) => ((Shape.RowsAt(level) - 1) / PyramidFile.TilePx) + 1;

    /// <summary>Number of a tile's place.</summary>
    public int PlaceOf(int level, int ink, int row, int column) => FirstOf(level) + (((ink * Down(level)) + row) * Across(level)) + column;

    /// <summary>Columns and rows of a tile.</summary>
    public (int Columns, int Rows) SizeOf(int level, int row, int column) => (
        Math.Min(PyramidFile.TilePx, Shape.ColumnsAt(level) - (column * PyramidFile.TilePx)),
        Math.Min(PyramidFile.TilePx, Shape.RowsAt(level) - (row * PyramidFile.TilePx)));

    private int FirstOf(int level)
    {
        int first = 0;
        for (int before = From; before < level; before++)
            first += Inks * Across(before) * Down(before);
        return first;
    }
}
