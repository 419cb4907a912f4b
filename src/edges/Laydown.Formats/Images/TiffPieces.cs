using System.Buffers.Binary;

namespace Laydown.Formats.Images;

/// <summary>Looks whether the strips or tiles of a TIFF page lie in the file, each in a place of its own: decoders fill a missing tile with nothing and say no word.</summary>
/// <remarks>Classic and big TIFF of either byte order; from memory of TIFF revision 6.0 and of the BigTIFF layout. Nothing is decoded; memory is bounded by the file's length.</remarks>
internal sealed class TiffPieces
{
    private const int StripOffsets = 273, StripByteCounts = 279, TileOffsets = 324, TileByteCounts = 325, MostPages = 100_000;
    private readonly FileStream file;
    private readonly bool big, bigEnd;

    private TiffPieces(FileStream file, bool big, bool bigEnd) => (this.file, this.big, this.bigEnd) = (file, big, bigEnd);

    private int WordBytes => big ? 8 : 4;

    /// <summary>What is wrong with the pieces of a page, in words; null where nothing is, or where the decoder must tell (no such page, no directory).</summary>
    /// <param name="path">The file.</param>
    /// <param name="page">Page from 1.</param>
    public static string? Damage(string path, int page)
    {
        using var file = File.OpenRead(path);
        byte[] start = new byte[16];
        if (file.ReadAtLeast(start, 8, throwOnEndOfStream: false) < 8)
            return null;
        bool bigEnd = start[0] == 'M', big = start[bigEnd ? 3 : 2] == 43;
        return new TiffPieces(file, big, bigEnd).Damage(big ? 8 : 4, page);
    }

    private string? Damage(long pointer, int page)
    {
        try
        {
            long place = (long)Number(pointer, WordBytes);
            for (int skip = 1; skip < page && skip < MostPages; skip++)
                place = (long)Number(place + CountBytes + (Entries(place) * EntryBytes), WordBytes);
            return place == 0 ? null : Of(place);
        }
        catch (EndOfStreamException)
        {
            return "a directory beyond the end of the file";
        }
    }

    private int CountBytes => big ? 8 : 2;

    private int EntryBytes => big ? 20 : 12;

    private long Entries(long directory) => (long)Math.Min(Number(directory, CountBytes), ushort.MaxValue);

    private string? Of(long directory)
    {
        ulong[] offsets = [], counts = [];
        for (long entry = 0; entry < Entries(directory); entry++)
        {
            long at = directory + CountBytes + (entry * EntryBytes);
            int tag = (int)Number(at, 2);
            if (tag is StripOffsets or TileOffsets)
                offsets = Values(at);
            else if (tag is StripByteCounts or TileByteCounts)
                counts = Values(at);
        }

        // Without counts the decoder works them out by itself.
        return counts.Length == 0 ? null : Of(offsets, counts);
    }

    private string? Of(ulong[] offsets, ulong[] counts)
    {
        if (offsets.Length != counts.Length)
            return Invariant($"{offsets.Length} places for {counts.Length} lengths of strips or tiles");
        for (int piece = 0; piece < offsets.Length; piece++)
        {
            if (offsets[piece] == 0 || counts[piece] == 0)
                return Invariant($"strip or tile {piece + 1} of {offsets.Length} missing");
            if (offsets[piece] > (ulong)file.Length || counts[piece] > (ulong)file.Length - offsets[piece])
                return Invariant($"strip or tile {piece + 1} of {offsets.Length} beyond the end of the file");
        }

        // In the order of their places, none may begin before the one before it ends.
        int[] order = [.. Enumerable.Range(0, offsets.Length).OrderBy(p => offsets[p])];
        for (int n = 1; n < order.Length; n++)
        {
            if (offsets[order[n]] < offsets[order[n - 1]] + counts[order[n - 1]])
                return Invariant($"strips or tiles {order[n - 1] + 1} and {order[n] + 1} over one another");
        }

        return null;
    }

    private ulong[] Values(long entry)
    {
        int size = Number(entry + 2, 2) switch { 3 => 2, 4 or 13 => 4, 16 or 18 => 8, _ => 1 };
        ulong count = Number(entry + 4, WordBytes);
        if (count > (ulong)(file.Length / size))
            throw new EndOfStreamException();
        long first = entry + 4 + WordBytes;
        long place = (long)count * size <= WordBytes ? first : (long)Number(first, WordBytes);
        byte[] all = new byte[(long)count * size];
        Fill(place, all);
        ulong[] values = new ulong[count];
        for (int n = 0; n < values.Length; n++)
            values[n] = Number(all.AsSpan(n * size, size));
        return values;
    }

    private ulong Number(long place, int bytes)
    {
        Span<byte> raw = stackalloc byte[bytes];
        Fill(place, raw);
        return Number(raw);
    }

    private ulong Number(ReadOnlySpan<byte> raw) => (raw.Length, bigEnd) switch
    {
        (2, false) => BinaryPrimitives.ReadUInt16LittleEndian(raw),
        (2, true) => BinaryPrimitives.ReadUInt16BigEndian(raw),
        (4, false) => BinaryPrimitives.ReadUInt32LittleEndian(raw),
        (4, true) => BinaryPrimitives.ReadUInt32BigEndian(raw),
        (8, false) => BinaryPrimitives.ReadUInt64LittleEndian(raw),
        (8, true) => BinaryPrimitives.ReadUInt64BigEndian(raw),
        _ => raw[0],
    };

    private void Fill(long place, Span<byte> into)
    {
        if (place < 0 || place > file.Length - into.Length)
            throw new EndOfStreamException();
        file.Position = place;
        file.ReadExactly(into);
    }
}
