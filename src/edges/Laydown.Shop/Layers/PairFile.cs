using Laydown.Measures;
using Microsoft.Win32.SafeHandles;

namespace Laydown.Shop.Layers;

/// <summary>A day and a night picture on one pixel grid, in two raw files that are read by rows.</summary>
/// <remarks>
/// Each file: row after row from the top, pixel after pixel L*, a*, b* of 16 bits, little endian: L* · 655.35, (a* + 128) · 257, (b* + 128) · 257.
/// One pair may serve several threads at once.
/// </remarks>
public sealed class PairFile : IDisposable
{
    /// <summary>Values of one pixel of a pair: L*, a*, b* by day, then at night.</summary>
    public const int Values = 6;

    private const int Half = 3;
    private const int PixelBytes = Half * sizeof(ushort);

    private readonly string[] paths;
    private readonly SafeFileHandle[] files;

    /// <summary>Opens a pair; the files are removed with it.</summary>
    /// <param name="width">Pixels across.</param>
    /// <param name="height">Pixels down.</param>
    /// <param name="dayPath">Full path of the day picture's raw file.</param>
    /// <param name="nightPath">Full path of the night picture's raw file.</param>
    /// <param name="findings">What was noticed.</param>
    /// <exception cref="InvalidDataException">A file has another length than its picture.</exception>
    public PairFile(int width, int height, string dayPath, string nightPath, IReadOnlyList<Finding> findings)
    {
        (Width, Height, Findings) = (width, height, findings);
        paths = [dayPath, nightPath];
        files = [.. paths.Select(p => File.OpenHandle(p, options: FileOptions.RandomAccess))];
        if (files.All(f => RandomAccess.GetLength(f) == (long)width * height * PixelBytes))
            return;
        Dispose();
        throw new InvalidDataException(Invariant($"pair: wanted {width} × {height} × {PixelBytes} bytes in each file"));
    }

    /// <summary>Pixels across.</summary>
    public int Width { get; }

    /// <summary>Pixels down.</summary>
    public int Height { get; }

    /// <summary>What was noticed in the pictures.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Some rows as numbers.</summary>
    /// <param name="firstRow">First row.</param>
    /// <param name="rows">How many.</param>
    /// <param name="pair">Takes 6 × width × rows values: for each pixel L*, a*, b* of day, then of night.</param>
    /// <exception cref="InvalidDataException">A file became shorter.</exception>
    public void Read(int firstRow, int rows, Span<float> pair)
    {
        ushort[] codes = new ushort[Half * Width * rows];
        Span<byte> bytes = System.Runtime.InteropServices.MemoryMarshal.AsBytes(codes.AsSpan());
        for (int picture = 0; picture < 2; picture++)
        {
            if (RandomAccess.Read(files[picture], bytes, (long)firstRow * Width * PixelBytes) != bytes.Length)
                throw new InvalidDataException("pair: a raw file is shorter than its picture");
            for (int pixel = 0, at = 0, to = Half * picture; pixel < Width * rows; pixel++, at += Half, to += Values)
            {
                pair[to] = codes[at] / 655.35f;
                pair[to + 1] = (codes[at + 1] / 257f) - 128;
                pair[to + 2] = (codes[at + 2] / 257f) - 128;
            }
        }
    }

    /// <summary>The whole pair made smaller: each pixel the mean of a square of pixels.</summary>
    /// <param name="mostPixels">Most pixels of the result, at least 1.</param>
    /// <param name="cancellation">Looked at before each row.</param>
    /// <returns>Width, height, and 6 values a pixel.</returns>
    public (int Width, int Height, float[] Pixels) Reduced(int mostPixels, CancellationToken cancellation)
    {
        double scale = Math.Min(1, Math.Sqrt(mostPixels / ((double)Width * Height)));
        int width = Math.Max(1, (int)(Width * scale)), height = Math.Max(1, (int)(Height * scale));
        float[] small = new float[Values * width * height];
        Parallel.For(0, height, new ParallelOptions { CancellationToken = cancellation }, row => Reduce(row, width, height, small));
        return (width, height, small);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (SafeFileHandle file in files)
            file.Dispose();
        foreach (string path in paths)
            File.Delete(path);
    }

    private void Reduce(int row, int width, int height, float[] small)
    {
        int top = (int)((long)row * Height / height), bottom = Math.Max(top + 1, (int)((long)(row + 1) * Height / height));
        float[] line = new float[Values * Width];
        double[] sums = new double[Values * width];
        for (int y = top; y < bottom; y++)
        {
            Read(y, 1, line);
            for (int column = 0; column < width; column++)
            {
                (int left, int right) = Covered(column, width);
                for (int at = left * Values; at < right * Values; at++)
                    sums[(column * Values) + (at % Values)] += line[at];
            }
        }

        for (int at = 0; at < sums.Length; at++)
        {
            (int left, int right) = Covered(at / Values, width);
            small[(row * sums.Length) + at] = (float)(sums[at] / ((right - left) * (bottom - top)));
        }
    }

    private (int From, int To) Covered(int column, int width)
    {
        int left = (int)((long)column * Width / width);
        return (left, Math.Max(left + 1, (int)((long)(column + 1) * Width / width)));
    }
}
