namespace Laydown.Output.PressFiles;

/// <summary>Small planes in memory, made from large ones by averaging.</summary>
internal sealed class PlaneMemory : IPlanes
{
    private readonly byte[] values;

    /// <summary>The planes of <paramref name="source"/> brought to another size: each pixel is the mean of those it covers.</summary>
    public PlaneMemory(IPlanes source, int rows, int columns, CancellationToken cancellation)
    {
        Inks = source.Inks;
        Rows = rows;
        Columns = columns;
        values = new byte[Inks * rows * columns];
        for (int ink = 0; ink < Inks; ink++)
        {
            int plane = ink;
            AllCores.Run(rows, () => (new byte[source.Columns], new int[source.Columns]), (row, own) => Reduce(source, plane, row, own.Item1, own.Item2), cancellation);
        }
    }

    public int Inks { get; }

    public int Rows { get; }

    public int Columns { get; }

    public void ReadRow(int ink, int row, int firstColumn, Span<byte> into) =>
        values.AsSpan((((ink * Rows) + row) * Columns) + firstColumn, into.Length).CopyTo(into);

    private void Reduce(IPlanes source, int ink, int row, byte[] line, int[] sums)
    {
        (int top, int bottom) = Covered(row, Rows, source.Rows);
        Array.Clear(sums);
        for (int y = top; y < bottom; y++)
        {
            source.ReadRow(ink, y, 0, line);
            for (int x = 0; x < line.Length; x++)
                sums[x] += line[x];
        }

        Span<byte> target = values.AsSpan(((ink * Rows) + row) * Columns, Columns);
        for (int column = 0; column < Columns; column++)
        {
            (int left, int right) = Covered(column, Columns, source.Columns);
            long sum = 0;
            for (int x = left; x < right; x++)
                sum += sums[x];
            long count = (long)(right - left) * (bottom - top);
            target[column] = (byte)((sum + (count / 2)) / count);
        }
    }

    private static (int From, int To) Covered(int at, int small, int large)
    {
        int from = (int)((long)at * large / small);
        return (from, Math.Max(from + 1, (int)((long)(at + 1) * large / small)));
    }
}
