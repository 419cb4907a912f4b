using System.IO.Compression;

namespace Laydown.Formats.TiffWriting;

/// <summary>Packs and unpacks strips: PackBits [TIFF6] and Deflate [RFC1950] in a zlib frame. Equal rows give equal bytes.</summary>
internal static class PackedStrips
{
    /// <summary>Most bytes a run or a stretch of PackBits stands for.</summary>
    private const int MostAtOnce = 128;

    /// <summary>The strip as it goes on file.</summary>
    /// <param name="packing">PackBits or Deflate.</param>
    /// <param name="rows">Rows one behind the other.</param>
    /// <param name="rowBytes">Bytes of a row: PackBits starts anew with each.</param>
    public static byte[] Pack(DotPacking packing, ReadOnlySpan<byte> rows, int rowBytes)
    {
        if (packing == DotPacking.Deflate)
        {
            using MemoryStream deflated = new(rows.Length / 2);
            using (ZLibStream stream = new(deflated, CompressionLevel.Fastest, leaveOpen: true))
                stream.Write(rows);
            return deflated.ToArray();
        }

        byte[] packed = new byte[rows.Length + ((rows.Length / rowBytes) * ((rowBytes / MostAtOnce) + 2))];
        int at = 0;
        for (int first = 0; first < rows.Length; first += rowBytes)
            at += PackRow(rows.Slice(first, rowBytes), packed.AsSpan(at));
        return packed.AsSpan(0, at).ToArray();
    }

    /// <summary>The rows of a strip.</summary>
    /// <param name="packing">PackBits or Deflate.</param>
    /// <param name="packed">The strip as it stands on file.</param>
    /// <param name="rows">Takes exactly its bytes.</param>
    /// <exception cref="InvalidDataException">The strip holds fewer or more bytes than its rows have, or is damaged.</exception>
    public static void Unpack(DotPacking packing, byte[] packed, Span<byte> rows)
    {
        if (packing == DotPacking.Deflate)
            Inflate(packed, rows);
        else
            UnpackBits(packed, rows);
    }

    private static void Inflate(byte[] packed, Span<byte> rows)
    {
        using MemoryStream from = new(packed, writable: false);
        using ZLibStream stream = new(from, CompressionMode.Decompress);
        int read = stream.ReadAtLeast(rows, rows.Length, throwOnEndOfStream: false);
        if (read < rows.Length)
            throw Fault(Invariant($"{read} bytes"), rows.Length);
        if (stream.ReadByte() >= 0)
            throw Fault("more bytes", rows.Length);
    }

    private static void UnpackBits(ReadOnlySpan<byte> packed, Span<byte> rows)
    {
        int at = 0, to = 0;
        while (to < rows.Length)
        {
            if (at >= packed.Length)
                throw Fault(Invariant($"{to} bytes"), rows.Length);
            int head = (sbyte)packed[at++];
            if (head == -128)
                continue;
            int count = head >= 0 ? head + 1 : 1 - head;
            if (count > rows.Length - to || (head >= 0 ? count : 1) > packed.Length - at)
                throw Fault("a run over the end", rows.Length);
            if (head >= 0)
                packed.Slice(at, count).CopyTo(rows[to..]);
            else
                rows.Slice(to, count).Fill(packed[at]);
            at += head >= 0 ? count : 1;
            to += count;
        }

        if (at != packed.Length)
            throw Fault("more bytes", rows.Length);
    }

    // Three equal bytes or more become a run; what lies between runs becomes stretches of at most 128 bytes.
    private static int PackRow(ReadOnlySpan<byte> row, Span<byte> into)
    {
        int at = 0, start = 0, x = 0;
        while (x < row.Length)
        {
            int run = RunAt(row, x);
            if (run < 3)
            {
                x += run;
                continue;
            }

            at += Stretch(row[start..x], into[at..]);
            into[at++] = (byte)(257 - run);
            into[at++] = row[x];
            x += run;
            start = x;
        }

        return at + Stretch(row[start..], into[at..]);
    }

    private static int RunAt(ReadOnlySpan<byte> row, int x)
    {
        ReadOnlySpan<byte> rest = row.Slice(x, Math.Min(MostAtOnce, row.Length - x));
        int end = rest.IndexOfAnyExcept(rest[0]);
        return end < 0 ? rest.Length : end;
    }

    private static int Stretch(ReadOnlySpan<byte> bytes, Span<byte> into)
    {
        int at = 0;
        for (; bytes.Length > 0; bytes = bytes[Math.Min(MostAtOnce, bytes.Length)..])
        {
            int count = Math.Min(MostAtOnce, bytes.Length);
            into[at++] = (byte)(count - 1);
            bytes[..count].CopyTo(into[at..]);
            at += count;
        }

        return at;
    }

    private static InvalidDataException Fault(string found, int wanted) => new(Invariant($"unpacks to {found}; wanted {wanted}"));
}
