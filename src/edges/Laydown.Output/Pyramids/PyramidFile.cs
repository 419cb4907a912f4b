using System.Buffers.Binary;
using System.IO.Compression;
using Laydown.Measures;
using Laydown.Shop.Run;
using Microsoft.Win32.SafeHandles;

namespace Laydown.Output.Pyramids;

/// <summary>A pyramid on disk: a header, the places of all tiles, then the tiles, each of one ink and 256 × 256 codes, packed.</summary>
/// <remarks>
/// Little-endian. Header of 32 bytes: <c>LDPYR1</c> and two zeros, columns, rows, inks, lowest level, number of levels, 0. Places of 12 bytes, level by level, then ink, row, column of tiles:
/// offset and length; length 0 says that all codes are equal to the offset. Tiles are packed with zlib [RFC1950].
/// </remarks>
internal sealed class PyramidFile : IDisposable
{
    public const int TilePx = 256, HeaderBytes = 32, PlaceBytes = 12;

    private static readonly byte[] Magic = [.. "LDPYR1\0\0"u8];
    private readonly SafeFileHandle file;
    private readonly byte[] places;

    private PyramidFile(SafeFileHandle file, PyramidLayout layout, byte[] places)
    {
        this.file = file;
        this.places = places;
        Layout = layout;
    }

    /// <summary>Sizes.</summary>
    public PyramidLayout Layout { get; }

    /// <summary>Opens a pyramid of that shape, or gives null where there is none or another.</summary>
    public static PyramidFile? Open(string path, PyramidLayout layout)
    {
        if (!File.Exists(path))
            return null;
        SafeFileHandle file = File.OpenHandle(path);
        byte[] head = new byte[HeaderBytes], places = new byte[layout.PlaceCount * PlaceBytes];
        if (RandomAccess.Read(file, head, 0) == HeaderBytes && head.AsSpan().SequenceEqual(Header(layout))
            && RandomAccess.Read(file, places, HeaderBytes) == places.Length)
            return new(file, layout, places);
        file.Dispose();
        return null;
    }

    /// <summary>The first bytes of a file.</summary>
    public static byte[] Header(PyramidLayout layout)
    {
        byte[] head = new byte[HeaderBytes];
        Magic.CopyTo(head, 0);
        foreach ((int value, int i) in new[] { layout.Shape.Columns, layout.Shape.Rows, layout.Inks, layout.From, layout.Levels }.Select((v, i) => (v, i)))
            BinaryPrimitives.WriteInt32LittleEndian(head.AsSpan(8 + (4 * i)), value);
        return head;
    }

    /// <summary>Copies part of a level of one ink.</summary>
    /// <param name="ink">Ink from 0.</param>
    /// <param name="part">The part, in values of its level.</param>
    /// <param name="into">Takes rows × columns codes.</param>
    /// <exception cref="InvalidDataException">The file is damaged.</exception>
    public void Read(int ink, PressPart part, Span<byte> into)
    {
        byte[] tile = new byte[TilePx * TilePx];
        for (int tileRow = part.Top / TilePx; tileRow * TilePx < part.Top + part.Rows; tileRow++)
        {
            for (int tileColumn = part.Left / TilePx; tileColumn * TilePx < part.Left + part.Columns; tileColumn++)
            {
                int wide = Unpack(part.Level, ink, tileRow, tileColumn, tile);
                int top = Math.Max(part.Top, tileRow * TilePx), bottom = Math.Min(part.Top + part.Rows, (tileRow + 1) * TilePx);
                int left = Math.Max(part.Left, tileColumn * TilePx), right = Math.Min(part.Left + part.Columns, (tileColumn + 1) * TilePx);
                for (int y = top; y < bottom; y++)
                {
                    tile.AsSpan(((y % TilePx) * wide) + (left % TilePx), right - left)
                        .CopyTo(into[(((y - part.Top) * part.Columns) + left - part.Left)..]);
                }
            }
        }
    }

    /// <inheritdoc/>
    public void Dispose() => file.Dispose();

    // Gives the width of the tile's rows.
    private int Unpack(int level, int ink, int tileRow, int tileColumn, byte[] tile)
    {
        (int wide, int high) = Layout.SizeOf(level, tileRow, tileColumn);
        ReadOnlySpan<byte> place = places.AsSpan(Layout.PlaceOf(level, ink, tileRow, tileColumn) * PlaceBytes, PlaceBytes);
        long offset = BinaryPrimitives.ReadInt64LittleEndian(place);
        int length = BinaryPrimitives.ReadInt32LittleEndian(place[8..]);
        if (length == 0)
        {
            tile.AsSpan(0, wide * high).Fill((byte)offset);
            return wide;
        }

        byte[] packed = new byte[Bounds.Within(length, 1, 2 * TilePx * TilePx)];
        if (RandomAccess.Read(file, packed, offset) != length)
            throw new InvalidDataException("Pyramid: a tile lies beyond the end of the file.");
        using ZLibStream zip = new(new MemoryStream(packed), CompressionMode.Decompress);
        zip.ReadExactly(tile.AsSpan(0, wide * high));
        return wide;
    }
}
