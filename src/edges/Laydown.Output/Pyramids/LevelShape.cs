namespace Laydown.Output.Pyramids;

/// <summary>Sizes of the levels of a picture: level n has one value for every 2^n × 2^n pixels, less at the right and lower edge.</summary>
/// <param name="Columns">Pixels across at level 0.</param>
/// <param name="Rows">Pixels down at level 0.</param>
internal readonly record struct LevelShape(int Columns, int Rows)
{
    /// <summary>Values of a level across.</summary>
    public int ColumnsAt(int level) => (int)((Columns + (1L << level) - 1) >> level);

    /// <summary>Values of a level down.</summary>
    public int RowsAt(int level) => (int)((Rows + (1L << level) - 1) >> level);

    /// <summary>Pixels that a value covers across.</summary>
    public int AcrossAt(int level, int column) => (int)Math.Min(1L << level, Columns - ((long)column << level));

    /// <summary>Pixels that a value covers down.</summary>
    public int DownAt(int level, int row) => (int)Math.Min(1L << level, Rows - ((long)row << level));

    /// <summary>Rounded means of a row of sums: sum ÷ (pixels · unit), halves upward.</summary>
    /// <param name="level">Level of the sums.</param>
    /// <param name="row">Row of the level.</param>
    /// <param name="sums">Sums of one ink.</param>
    /// <param name="unit">Sum of a pixel of code 1.</param>
    /// <param name="means">Takes as many codes.</param>
    public void Means(int level, int row, ReadOnlySpan<ulong> sums, uint unit, Span<byte> means)
    {
        ulong down = (ulong)DownAt(level, row) * unit, whole = down << level;
        int last = sums.Length - 1;
        if ((whole & (whole - 1)) == 0)
        {
            int shift = System.Numerics.BitOperations.TrailingZeroCount(whole);
            for (int x = 0; x < last; x++)
                means[x] = (byte)((sums[x] + (whole >> 1)) >> shift);
        }
        else
        {
            for (int x = 0; x < last; x++)
                means[x] = (byte)((sums[x] + (whole >> 1)) / whole);
        }

        ulong edge = down * (ulong)AcrossAt(level, last);
        means[last] = (byte)((sums[last] + (edge >> 1)) / edge);
    }
}
