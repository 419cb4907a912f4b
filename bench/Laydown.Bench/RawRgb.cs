using Laydown.Raster.Tiles;
using Microsoft.Win32.SafeHandles;

namespace Laydown.Bench;

/// <summary>RGB of 8 bits in a raw file, plane after plane, read row by row as plates are.</summary>
internal sealed class RawRgb : ITileSource, IDisposable
{
    private const int Planes = 3;

    private readonly SafeFileHandle file;

    private RawRgb(string path, int columns, int rows)
    {
        FullPath = path;
        (Columns, Rows) = (columns, rows);
        file = File.OpenHandle(path);
    }

    /// <summary>Where it lies.</summary>
    public string FullPath { get; }

    /// <inheritdoc/>
    public int Inks => Planes;

    /// <inheritdoc/>
    public int Rows { get; }

    /// <inheritdoc/>
    public int Columns { get; }

    /// <summary>Writes a picture made of a square one, repeated from another corner; white where the mask is bare.</summary>
    public static RawRgb Write(string path, byte[] square, byte[]? mask, int side, int columns, int rows, int number)
    {
        using (FileStream stream = File.Create(path))
        {
            byte[] line = new byte[columns];
            for (int plane = 0; plane < Planes; plane++)
            {
                for (int row = 0; row < rows; row++)
                {
                    for (int x = 0; x < columns; x++)
                    {
                        int at = ((row + (number * 977)) % side * side) + ((x + (number * 1531)) % side);
                        line[x] = mask is not null && mask[at] == 0 ? (byte)255 : square[(at * Planes) + plane];
                    }

                    stream.Write(line);
                }
            }

            stream.Flush(flushToDisk: true);
        }

        return new(path, columns, rows);
    }

    /// <summary>A picture written before.</summary>
    public static RawRgb Open(string path, int columns, int rows) => new(path, columns, rows);

    /// <inheritdoc/>
    public void ReadRow(int ink, int row, int firstColumn, Span<ushort> into)
    {
        Span<byte> bytes = RawBytes.UpperHalf(into);
        if (RandomAccess.Read(file, bytes, ((((long)ink * Rows) + row) * Columns) + firstColumn) != bytes.Length)
            throw new InvalidDataException("picture: shorter than its size");
        RawBytes.Widen(into);
    }

    /// <inheritdoc/>
    public void Dispose() => file.Dispose();
}
