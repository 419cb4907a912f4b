using System.Buffers.Binary;
using Microsoft.Win32.SafeHandles;

namespace Laydown.Intake.Artwork;

/// <summary>Where the pixels of an uncompressed one-plane TIFF lie that is still being written: behind a directory that is written first, row after row.</summary>
/// <remarks>Classic little-endian TIFF (revision 6.0, from memory), as Ghostscript's separation device writes it with compression none.</remarks>
internal static class TiffLayout
{
    private const int HeaderBytes = 8, EntryBytes = 12;
    private const ushort StripOffsets = 273, StripByteCounts = 279;

    /// <summary>Byte where the first row begins; null while the directory is not there yet.</summary>
    public static long? FirstRow(SafeFileHandle file)
    {
        if (Entries(file) is not { } entries)
            return null;

        // The first row follows the directory and the values that lie outside it.
        long end = HeaderBytes + 2 + entries.Length + 4;
        for (int at = 0; at < entries.Length; at += EntryBytes)
        {
            var (_, bytes, place) = Entry(entries.AsSpan(at, EntryBytes));
            if (bytes > 4)
                end = Math.Max(end, place + bytes);
        }

        return end;
    }

    /// <summary>Whether the finished file has its rows where they were taken from: all strips in one piece, the first at the place given.</summary>
    public static bool HasRowsAt(SafeFileHandle file, long firstRow, long bytes)
    {
        if (Entries(file) is not { } entries)
            return false;
        uint[] offsets = [], counts = [];
        for (int at = 0; at < entries.Length; at += EntryBytes)
        {
            var entry = entries.AsSpan(at, EntryBytes);
            ushort tag = BinaryPrimitives.ReadUInt16LittleEndian(entry);
            if (tag == StripOffsets)
                offsets = Values(file, entry);
            else if (tag == StripByteCounts)
                counts = Values(file, entry);
        }

        long next = firstRow;
        for (int strip = 0; strip < offsets.Length && strip < counts.Length; strip++)
        {
            if (offsets[strip] != next)
                return false;
            next += counts[strip];
        }

        return offsets.Length == counts.Length && next == firstRow + bytes;
    }

    private static byte[]? Entries(SafeFileHandle file)
    {
        Span<byte> start = stackalloc byte[HeaderBytes + 2];
        if (RandomAccess.Read(file, start, 0) < start.Length || start is not [(byte)'I', (byte)'I', 42, 0, ..]
            || BinaryPrimitives.ReadUInt32LittleEndian(start[4..]) != HeaderBytes)
            return null;
        byte[] entries = new byte[BinaryPrimitives.ReadUInt16LittleEndian(start[HeaderBytes..]) * EntryBytes];
        return entries.Length > 0 && RandomAccess.Read(file, entries, HeaderBytes + 2) == entries.Length ? entries : null;
    }

    private static (ushort Type, long Bytes, long Place) Entry(ReadOnlySpan<byte> entry)
    {
        ushort type = BinaryPrimitives.ReadUInt16LittleEndian(entry[2..]);
        int size = type switch { 3 or 8 => 2, 4 or 9 or 11 => 4, 5 or 10 or 12 => 8, _ => 1 };
        return (type, size * (long)BinaryPrimitives.ReadUInt32LittleEndian(entry[4..]), BinaryPrimitives.ReadUInt32LittleEndian(entry[8..]));
    }

    private static uint[] Values(SafeFileHandle file, ReadOnlySpan<byte> entry)
    {
        var (type, bytes, place) = Entry(entry);
        byte[] raw = new byte[Math.Min(bytes, RandomAccess.GetLength(file))];
        if (bytes <= 4)
            entry.Slice(8, (int)bytes).CopyTo(raw);
        else
            Positional.Fill(file, raw, place);
        return type == 3
            ? [.. Enumerable.Range(0, raw.Length / 2).Select(n => (uint)BinaryPrimitives.ReadUInt16LittleEndian(raw.AsSpan(2 * n)))]
            : [.. Enumerable.Range(0, raw.Length / 4).Select(n => BinaryPrimitives.ReadUInt32LittleEndian(raw.AsSpan(4 * n)))];
    }
}
