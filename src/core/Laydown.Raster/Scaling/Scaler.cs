using Laydown.Raster.Tiles;

namespace Laydown.Raster.Scaling;

/// <summary>Brings tiles to another size. One for each worker: what it holds is used again.</summary>
/// <remarks>
/// Down, then across. Inside, values have 15 bits and room above full and below bare, so that an overshoot of the first way is not cut before the second:
/// the result lies within 8 codes of 65535 of double arithmetic, and flat stays flat but for its last bit. Overshoot is cut at the end.
/// </remarks>
public sealed class Scaler
{
    private readonly AxisScale rows, columns;
    private readonly Lanes lanes;
    private readonly AcrossPlan plan;
    private short[] source = [];
    private short[] line = [];
    private ushort[] result = [];

    /// <summary>A scaler for a picture.</summary>
    /// <param name="rows">Its way down.</param>
    /// <param name="columns">Its way across.</param>
    public Scaler(AxisScale rows, AxisScale columns)
        : this(rows, columns, LanesHere.Best)
    {
    }

    /// <summary>The same at a width of its own.</summary>
    internal Scaler(AxisScale rows, AxisScale columns, Lanes lanes)
    {
        this.rows = rows;
        this.columns = columns;
        this.lanes = lanes;
        plan = new(columns, lanes);
    }

    /// <summary>Fills a tile of new pixels.</summary>
    /// <param name="source">Its place is in the old pixels; it holds at least the ranges that the two ways name for the target.</param>
    /// <param name="target">Its place is in the new pixels; as many inks.</param>
    /// <exception cref="ArgumentException">The source does not hold what is needed.</exception>
    public void Run(Tile source, Tile target)
    {
        (int row, int high) = rows.SourceRange(target.FirstRow, target.Rows);
        (int column, int wide) = columns.SourceRange(target.FirstColumn, target.Columns);
        (int top, int left) = (row - source.FirstRow, column - source.FirstColumn);
        if (top < 0 || left < 0 || top + high > source.Rows || left + wide > source.Columns || source.Inks != target.Inks)
            throw new ArgumentException(Invariant($"Source: found {source.Inks} inks at {source.FirstRow}, {source.FirstColumn} of {source.Rows} × {source.Columns}; ")
                + Invariant($"wanted {target.Inks} at {row}, {column} of {high} × {wide}."), nameof(source));
        if (rows.SourcePixels == rows.TargetPixels && columns.SourcePixels == columns.TargetPixels)
        {
            Copy(source, top, left, target);
            return;
        }

        plan.Take(target.FirstColumn, target.Columns);
        int stride = Room(high, wide);
        for (int ink = 0; ink < target.Inks; ink++)
        {
            for (int y = 0; y < high; y++)
                RoomyValues.From(source.Row(ink, top + y).Slice(left, wide), this.source.AsSpan(y * stride, wide));
            for (int y = 0; y < target.Rows; y++)
            {
                int from = rows.FirstOf(target.FirstRow + y) - row;
                DownKernel.Run(lanes, this.source.AsSpan(from * stride), stride, rows.WeightsOf(target.FirstRow + y), line.AsSpan(0, stride));
                plan.Run(line, result);
                result.AsSpan(0, target.Columns).CopyTo(target.Row(ink, y));
            }
        }
    }

    private static void Copy(Tile source, int top, int left, Tile target)
    {
        for (int ink = 0; ink < target.Inks; ink++)
        {
            for (int y = 0; y < target.Rows; y++)
                source.Row(ink, top + y).Slice(left, target.Columns).CopyTo(target.Row(ink, y));
        }
    }

    // Rows of whole registers, and behind a line enough that the widest window may be read.
    private int Room(int high, int wide)
    {
        int stride = (wide + AcrossPlan.Window - 1) / AcrossPlan.Window * AcrossPlan.Window;
        if (source.Length < high * stride)
            source = new short[high * stride];
        int ahead = stride + columns.Taps + (2 * AcrossPlan.Window);
        if (line.Length < ahead)
            line = new short[ahead];
        if (result.Length < plan.Room)
            result = new ushort[plan.Room];
        return stride;
    }
}
