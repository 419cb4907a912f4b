using Laydown.Measures;

namespace Laydown.Raster.Screens;

/// <summary>A rectangle of dots: inks × rows × columns, 1 or 2 bits a dot, first dot in the highest bits, rows padded to whole
/// bytes.</summary>
/// <remarks>Bits beyond the last column are 0. A new rectangle is bare. Used again by <see cref="Shape"/>.</remarks>
public sealed class DotRows
{
    private byte[] values = [];

    /// <summary>Bare dots.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A count is below 1, or dots have neither 1 nor 2 bits.</exception>
    public DotRows(int inks, int rows, int columns, int bitsPerDot)
    {
        BitsPerDot = Bounds.Within(bitsPerDot, 1, 2);
        Shape(inks, rows, columns);
    }

    /// <summary>How many inks.</summary>
    public int Inks { get; private set; }

    /// <summary>Dots down.</summary>
    public int Rows { get; private set; }

    /// <summary>Dots across.</summary>
    public int Columns { get; private set; }

    /// <summary>Bits of a dot: 1 or 2.</summary>
    public int BitsPerDot { get; }

    /// <summary>Bytes of a row.</summary>
    public int Stride { get; private set; }

    /// <summary>Gives it another shape; memory grows only where the shape needs more. What it holds afterwards is left over: clear it, or
    /// fill all of it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A count is below 1.</exception>
    public void Shape(int inks, int rows, int columns)
    {
        Inks = Bounds.Within(inks, 1, 64);
        Rows = Bounds.Within(rows, 1, int.MaxValue);
        Columns = Bounds.Within(columns, 1, int.MaxValue - 8);
        Stride = checked((columns * BitsPerDot) + 7) / 8;
        int wanted = checked(inks * rows * Stride);
        if (values.Length < wanted)
            values = new byte[wanted];
    }

    /// <summary>Makes all dots bare.</summary>
    public void Clear() => values.AsSpan(0, Inks * Rows * Stride).Clear();

    /// <summary>One row of one ink, packed.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such ink or row.</exception>
    public Span<byte> Row(int ink, int row)
    {
        int at = (Bounds.Within(ink, 0, Inks - 1) * Rows) + Bounds.Within(row, 0, Rows - 1);
        return values.AsSpan(at * Stride, Stride);
    }

    /// <summary>All rows of one ink, one behind the other.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such ink.</exception>
    public Span<byte> Plane(int ink) => values.AsSpan(Bounds.Within(ink, 0, Inks - 1) * Rows * Stride, Rows * Stride);

    /// <summary>Code of one dot: 0 = bare.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such dot.</exception>
    public int this[int ink, int row, int column]
    {
        get
        {
            int bit = Bounds.Within(column, 0, Columns - 1) * BitsPerDot;
            return (Row(ink, row)[bit >> 3] >> (8 - BitsPerDot - (bit & 7))) & ((1 << BitsPerDot) - 1);
        }
    }
}
