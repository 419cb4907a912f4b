using Laydown.Measures;

namespace Laydown.Raster.Tiles;

/// <summary>A rectangle of ink values: inks × rows × columns, 16 bits, 0 = bare, 65535 = full laydown.</summary>
/// <remarks>Plane after plane, row after row from the top. A new tile is bare.</remarks>
public sealed class Tile
{
    /// <summary>Full laydown of one ink.</summary>
    public const ushort Full = ushort.MaxValue;

    private ushort[] values;

    /// <summary>A bare tile.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A count is below 1.</exception>
    public Tile(int inks, int rows, int columns)
    {
        values = [];
        Shape(inks, rows, columns);
    }

    /// <summary>How many inks.</summary>
    public int Inks { get; private set; }

    /// <summary>Pixels down.</summary>
    public int Rows { get; private set; }

    /// <summary>Pixels across.</summary>
    public int Columns { get; private set; }

    /// <summary>Row of the picture that the first row is; below 0 where the tile reaches over the upper edge.</summary>
    public int FirstRow { get; private set; }

    /// <summary>Column of the picture that the first column is; below 0 where the tile reaches over the left edge.</summary>
    public int FirstColumn { get; private set; }

    /// <summary>Gives a tile that is used again another shape; memory grows only where the shape needs more. What it holds afterwards is left over.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A count is below 1.</exception>
    internal void Shape(int inks, int rows, int columns)
    {
        Inks = Bounds.Within(inks, 1, 64);
        Rows = Bounds.Within(rows, 1, int.MaxValue);
        Columns = Bounds.Within(columns, 1, int.MaxValue);
        int wanted = checked(inks * rows * columns);
        if (values.Length < wanted)
            values = new ushort[wanted];
    }

    /// <summary>Makes all values bare.</summary>
    internal void Clear() => values.AsSpan(0, Inks * Rows * Columns).Clear();

    /// <summary>Says where in the picture the tile lies, for stages that do not treat all places alike.</summary>
    /// <param name="firstRow">Row of the picture that the first row is.</param>
    /// <param name="firstColumn">Column of the picture that the first column is.</param>
    public void PlaceAt(int firstRow, int firstColumn) => (FirstRow, FirstColumn) = (firstRow, firstColumn);

    /// <summary>All rows of one ink, one behind the other.</summary>
    internal Span<ushort> Plane(int ink) => values.AsSpan(Bounds.Within(ink, 0, Inks - 1) * Rows * Columns, Rows * Columns);

    /// <summary>One row of one ink, to read or to write.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such ink or row.</exception>
    public Span<ushort> Row(int ink, int row)
    {
        int first = ((Bounds.Within(ink, 0, Inks - 1) * Rows) + Bounds.Within(row, 0, Rows - 1)) * Columns;
        return values.AsSpan(first, Columns);
    }
}
