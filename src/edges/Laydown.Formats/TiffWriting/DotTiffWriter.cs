using System.IO.Hashing;
using Laydown.Measures;
using Microsoft.Win32.SafeHandles;

namespace Laydown.Formats.TiffWriting;

/// <summary>Writes the dots of one ink as BigTIFF, strip by strip, from any thread and in any order; equal dots give equal bytes.</summary>
/// <remarks>
/// Strips lie one behind the other, the directory after them. Unpacked strips go to their place at once, in a file that has its full length
/// from the start, so that a full disk shows at once. Packed strips wait in memory for those before them: as many as come while one is
/// being made. The file's first bytes point to the directory only after <see cref="Finish"/>: what is not whole, no reader takes.
/// </remarks>
public sealed class DotTiffWriter : IDisposable
{
    private readonly DotHeader header;
    private readonly SafeFileHandle file;
    private readonly Lock gate = new();
    private readonly Dictionary<int, byte[]> waiting = [];
    private readonly long[] offsets, lengths;
    private int prefix;

    private DotTiffWriter(DotHeader header, SafeFileHandle file)
    {
        this.header = header;
        this.file = file;
        offsets = new long[header.Strips];
        lengths = new long[header.Strips];
    }

    /// <summary>Starts a file; one that lies there is replaced.</summary>
    /// <param name="path">Where.</param>
    /// <param name="header">What the file says about itself.</param>
    /// <exception cref="ArgumentException">The header is out of range.</exception>
    /// <exception cref="IOException">The file cannot be made, or there is no room for it.</exception>
    public static DotTiffWriter Create(string path, DotHeader header)
    {
        long length = header.Checked().Packing == DotPacking.None ? header.PlainFileBytes : 0;
        SafeFileHandle file = File.OpenHandle(path, FileMode.Create, FileAccess.ReadWrite, FileShare.Read, FileOptions.None, length);
        return Started(header, file, new Dictionary<int, StripStamp>());
    }

    /// <summary>Goes on with a file that was broken off.</summary>
    /// <param name="path">Where it lies.</param>
    /// <param name="header">The header it was started with.</param>
    /// <param name="kept">
    /// Strips that are on file, as <see cref="SoundStrips"/> found them. Packed strips are kept only as far as none is missing before them.
    /// </param>
    /// <exception cref="IOException">The file cannot be opened.</exception>
    public static DotTiffWriter Reopen(string path, DotHeader header, IReadOnlyDictionary<int, StripStamp> kept) =>
        Started(header.Checked(), File.OpenHandle(path, FileMode.Open, FileAccess.ReadWrite, FileShare.Read), kept);

    /// <summary>Reads a broken-off file back and tells which strips are as they were stamped.</summary>
    /// <param name="path">Where it lies.</param>
    /// <param name="header">The header it was started with.</param>
    /// <param name="stamps">What <see cref="Write"/> gave.</param>
    /// <param name="cancellation">Looked at before each strip.</param>
    /// <returns>Sound strips; packed ones only as far as none is missing or damaged before them.</returns>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public static IReadOnlySet<int> SoundStrips(
        string path, DotHeader header, IReadOnlyDictionary<int, StripStamp> stamps, CancellationToken cancellation)
    {
        HashSet<int> sound = [];
        if (!File.Exists(path))
            return sound;
        using SafeFileHandle file = File.OpenHandle(path);
        byte[] bytes = [];
        long at = DotDirectory.FirstStrip;
        for (int strip = 0; strip < header.Checked().Strips; strip++)
        {
            cancellation.ThrowIfCancellationRequested();
            if (IsSound(strip))
                sound.Add(strip);
            else if (header.Packing != DotPacking.None)
                break;
        }

        return sound;

        bool IsSound(int strip)
        {
            bool plain = header.Packing == DotPacking.None;
            if (!stamps.TryGetValue(strip, out StripStamp stamp) || stamp.Bytes <= 0 || (plain && stamp.Bytes != header.BytesOf(strip)))
                return false;
            long from = plain ? PlaceOf(header, strip) : at;
            if (from + stamp.Bytes > RandomAccess.GetLength(file))
                return false;
            if (bytes.Length < stamp.Bytes)
                bytes = new byte[stamp.Bytes];
            at += stamp.Bytes;
            Span<byte> read = bytes.AsSpan(0, stamp.Bytes);
            return FileBytes.TryRead(file, read, from) && XxHash64.HashToUInt64(read) == stamp.Hash;
        }
    }

    /// <summary>Whether a strip is on file, not only in memory.</summary>
    public bool IsOnFile(int strip)
    {
        lock (gate)
            return offsets[Bounds.Within(strip, 0, header.Strips - 1)] > 0;
    }

    /// <summary>Takes the dots of one strip. From any thread, in any order; a packed strip that is on file already is let alone.</summary>
    /// <param name="strip">From 0.</param>
    /// <param name="rows">Its rows, <see cref="DotHeader.RowBytes"/> each, padding bits 0.</param>
    /// <returns>What the strip is known by; it may reach the file only with a later call.</returns>
    /// <exception cref="ArgumentException">The strip has another length.</exception>
    /// <exception cref="IOException">The disk is full or refuses.</exception>
    public StripStamp Write(int strip, ReadOnlySpan<byte> rows)
    {
        int wanted = header.BytesOf(strip);
        if (rows.Length != wanted)
            throw new ArgumentException(Invariant($"Strip {strip}: found {rows.Length} bytes; wanted {wanted}."), nameof(rows));
        if (header.Packing == DotPacking.None)
        {
            RandomAccess.Write(file, rows, PlaceOf(header, strip));
            lock (gate)
                SetPlace(strip, PlaceOf(header, strip), rows.Length);
            return new(rows.Length, XxHash64.HashToUInt64(rows));
        }

        byte[] packed = PackedStrips.Pack(header.Packing, rows, header.RowBytes);
        lock (gate)
        {
            if (strip >= prefix)
                waiting[strip] = packed;
            WriteWaiting();
        }

        return new(packed.Length, XxHash64.HashToUInt64(packed));
    }

    /// <summary>Writes the directory; the file is whole after this.</summary>
    /// <exception cref="InvalidOperationException">Strips are missing.</exception>
    /// <exception cref="IOException">The disk is full or refuses.</exception>
    public void Finish()
    {
        lock (gate)
        {
            int missing = offsets.AsSpan().IndexOf(0);
            if (missing >= 0)
                throw new InvalidOperationException(Invariant($"Strips: found none at {missing}; wanted all {header.Strips}."));
            long at = (offsets[^1] + lengths[^1] + 7) & ~7L;
            byte[] directory = DotDirectory.Of(header, offsets, lengths, at);
            RandomAccess.SetLength(file, at + directory.Length);
            RandomAccess.Write(file, directory, at);
            RandomAccess.Write(file, DotDirectory.FileHeader(at), 0);
        }
    }

    /// <summary>Closes the file; what was not finished stays unreadable.</summary>
    public void Dispose() => file.Dispose();

    private static DotTiffWriter Started(DotHeader header, SafeFileHandle file, IReadOnlyDictionary<int, StripStamp> kept)
    {
        DotTiffWriter writer = new(header, file);
        try
        {
            RandomAccess.Write(file, DotDirectory.FileHeader(0), 0);
            writer.Keep(kept);
            return writer;
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }

    private void Keep(IReadOnlyDictionary<int, StripStamp> kept)
    {
        for (int strip = 0; strip < header.Strips; strip++)
        {
            if (kept.TryGetValue(strip, out StripStamp stamp))
                SetPlace(strip, header.Packing == DotPacking.None ? PlaceOf(header, strip) : End(strip), stamp.Bytes);
            else if (header.Packing != DotPacking.None)
                break;
        }
    }

    // Only with the gate held, or before anyone else knows of the writer.
    private void WriteWaiting()
    {
        while (waiting.TryGetValue(prefix, out byte[]? packed))
        {
            int strip = prefix;
            RandomAccess.Write(file, packed, End(strip));
            SetPlace(strip, End(strip), packed.Length);
            waiting.Remove(strip);
        }
    }

    private void SetPlace(int strip, long offset, long length)
    {
        offsets[strip] = offset;
        lengths[strip] = length;
        while (prefix < offsets.Length && offsets[prefix] > 0)
            prefix++;
    }

    private long End(int strip) => strip == 0 ? DotDirectory.FirstStrip : offsets[strip - 1] + lengths[strip - 1];

    private static long PlaceOf(DotHeader header, int strip) =>
        DotDirectory.FirstStrip + ((long)strip * header.RowsPerStrip * header.RowBytes);
}
