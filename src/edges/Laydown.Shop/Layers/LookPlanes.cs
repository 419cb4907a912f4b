using Microsoft.Win32.SafeHandles;

namespace Laydown.Shop.Layers;

/// <summary>The planes of a stored look, read by rows.</summary>
public sealed class LookPlanes : IDisposable
{
    private readonly SafeFileHandle file;

    /// <summary>Opens the planes in a look's folder.</summary>
    /// <param name="record">The look.</param>
    /// <param name="folder">Full path of its folder.</param>
    /// <exception cref="IOException">The file cannot be opened.</exception>
    public LookPlanes(LookRecord record, string folder)
    {
        (Width, Height, Count) = (record.WidthPx, record.HeightPx, record.PlaneCount);
        file = File.OpenHandle(Path.Combine(folder, LookRecord.PlanesFile));
    }

    /// <summary>Pixels across.</summary>
    public int Width { get; }

    /// <summary>Pixels down.</summary>
    public int Height { get; }

    /// <summary>Planes.</summary>
    public int Count { get; }

    /// <summary>Part of one row of one plane.</summary>
    /// <exception cref="InvalidDataException">The file is shorter than its picture.</exception>
    public void ReadRow(int plane, int row, int firstColumn, Span<byte> into)
    {
        if (RandomAccess.Read(file, into, ((((long)plane * Height) + row) * Width) + firstColumn) != into.Length)
            throw new InvalidDataException(Invariant($"{LookRecord.PlanesFile}: shorter than {Count} × {Height} × {Width} bytes"));
    }

    /// <summary>All planes of one row, plane after plane.</summary>
    /// <param name="row">Row from 0.</param>
    /// <param name="into">Takes planes × width bytes.</param>
    public void ReadRow(int row, Span<byte> into)
    {
        for (int plane = 0; plane < Count; plane++)
            ReadRow(plane, row, 0, into.Slice(plane * Width, Width));
    }

    /// <summary>The planes brought to another size, each pixel the mean of those it covers; planes × rows × columns.</summary>
    /// <param name="columns">Pixels across, 1 to <see cref="Width"/>.</param>
    /// <param name="rows">Pixels down, 1 to <see cref="Height"/>.</param>
    /// <param name="cancellation">Looked at before each row.</param>
    public byte[] Reduced(int columns, int rows, CancellationToken cancellation)
    {
        byte[] small = new byte[Count * rows * columns];
        Parallel.For(0, rows, new ParallelOptions { CancellationToken = cancellation }, row =>
        {
            byte[] line = new byte[Width];
            int[] sums = new int[Width];
            for (int plane = 0; plane < Count; plane++)
                Reduce(plane, row, rows, line, sums, small.AsSpan(((plane * rows) + row) * columns, columns));
        });
        return small;
    }

    /// <inheritdoc/>
    public void Dispose() => file.Dispose();

    private void Reduce(int plane, int row, int rows, byte[] line, int[] sums, Span<byte> target)
    {
        (int top, int bottom) = Covered(row, rows, Height);
        Array.Clear(sums);
        for (int y = top; y < bottom; y++)
        {
            ReadRow(plane, y, 0, line);
            for (int x = 0; x < line.Length; x++)
                sums[x] += line[x];
        }

        for (int column = 0; column < target.Length; column++)
        {
            (int left, int right) = Covered(column, target.Length, Width);
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
