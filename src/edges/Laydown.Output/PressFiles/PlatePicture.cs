using System.Buffers;
using Laydown.Raster.Separation;
using Laydown.Raster.Tiles;
using Laydown.Shop.Artwork;
using Microsoft.Win32.SafeHandles;

namespace Laydown.Output.PressFiles;

/// <summary>The plates of a rendered page as a picture for the stages: 8 bits widened to 16. Read from several threads.</summary>
internal sealed class PlatePicture : ITileSource, IDisposable
{
    private readonly SafeFileHandle file;

    /// <summary>Opens the raw file of a page; it stays the page's.</summary>
    /// <exception cref="InvalidDataException">The file has another length than its plates.</exception>
    public PlatePicture(RenderedPage page)
    {
        Inks = page.Plates.Count;
        Rows = page.Height;
        Columns = page.Width;
        file = File.OpenHandle(page.RawPath);
        long wanted = (long)Inks * Rows * Columns;
        long found = RandomAccess.GetLength(file);
        if (found == wanted && wanted > 0)
            return;
        file.Dispose();
        throw new InvalidDataException(Invariant($"plates: found {found} bytes; wanted {Inks} × {Rows} × {Columns} = {wanted}"));
    }

    public int Inks { get; }

    public int Rows { get; }

    public int Columns { get; }

    public void ReadRow(int ink, int row, int firstColumn, Span<ushort> into)
    {
        byte[] line = ArrayPool<byte>.Shared.Rent(into.Length);
        Span<byte> bytes = line.AsSpan(0, into.Length);
        long offset = ((((long)ink * Rows) + row) * Columns) + firstColumn;
        if (RandomAccess.Read(file, bytes, offset) != bytes.Length)
            throw new InvalidDataException("plates: the raw file became shorter while it was read");
        for (int x = 0; x < into.Length; x++)
            into[x] = EightBits.Widened(bytes[x]);
        ArrayPool<byte>.Shared.Return(line);
    }

    public void Dispose() => file.Dispose();
}
