using System.Buffers.Binary;
using System.Text;

namespace Laydown.Formats.TiffWriting;

/// <summary>The directory of a dot TIFF as bytes: BigTIFF, little-endian, fields in ascending order, long values behind them.</summary>
/// <remarks>
/// PhotometricInterpretation is WhiteIsZero with InkSet, NumberOfInks and InkNames beside it: by trial the one way in which libtiff, libvips
/// and ImageMagick all take one ink of 1 and 2 bits and show bare sheet as white; libvips refuses Separated below 8 bits.
/// </remarks>
internal sealed class DotDirectory
{
    /// <summary>Where the first strip starts: right after the file's header.</summary>
    public const int FirstStrip = 16;

    private const int EntryBytes = 20;

    private readonly SortedDictionary<ushort, (ushort Type, long Count, byte[] Value)> fields = [];

    private DotDirectory(DotHeader header, ReadOnlySpan<long> offsets, ReadOnlySpan<long> lengths)
    {
        Set(TiffTags.ImageWidth, TiffTags.Long, header.Columns);
        Set(TiffTags.ImageLength, TiffTags.Long, header.Rows);
        Set(TiffTags.BitsPerSample, TiffTags.Short, header.BitsPerDot);
        Set(TiffTags.Compression, TiffTags.Short, TiffTags.CodeOf(header.Packing));
        Set(TiffTags.Photometric, TiffTags.Short, TiffTags.MinIsWhite);
        SetText(TiffTags.ImageDescription, SevenBit(header.Description) + "\0");
        Set(TiffTags.StripOffsets, TiffTags.Long8, offsets);
        Set(TiffTags.Orientation, TiffTags.Short, 1);
        Set(TiffTags.SamplesPerPixel, TiffTags.Short, 1);
        Set(TiffTags.RowsPerStrip, TiffTags.Long, header.RowsPerStrip);
        Set(TiffTags.StripByteCounts, TiffTags.Long8, lengths);
        SetRational(TiffTags.XResolution, header.ScanDpi);
        SetRational(TiffTags.YResolution, header.FeedDpi);
        Set(TiffTags.PlanarConfiguration, TiffTags.Short, 1);
        Set(TiffTags.ResolutionUnit, TiffTags.Short, 2);
        SetText(TiffTags.Software, "Laydown\0");
        Set(TiffTags.InkSet, TiffTags.Short, 2);
        SetText(TiffTags.InkNames, header.InkName + "\0");
        Set(TiffTags.NumberOfInks, TiffTags.Short, 1);
        if (!header.Icc.IsEmpty)
            fields[TiffTags.IccProfile] = (TiffTags.Undefined, header.Icc.Length, header.Icc.ToArray());
    }

    /// <summary>The directory of a file whose strips lie there.</summary>
    /// <param name="header">What the file says about itself.</param>
    /// <param name="offsets">Where each strip starts.</param>
    /// <param name="lengths">Its bytes on file.</param>
    /// <param name="at">Where the directory will stand.</param>
    public static byte[] Of(DotHeader header, ReadOnlySpan<long> offsets, ReadOnlySpan<long> lengths, long at) =>
        new DotDirectory(header, offsets, lengths).Bytes(at);

    /// <summary>How long the directory of such a file is.</summary>
    public static int BytesOf(DotHeader header) => Of(header, new long[header.Strips], new long[header.Strips], 0).Length;

    /// <summary>The first 16 bytes of the file.</summary>
    /// <param name="directory">Where the directory stands; 0 while the file is not whole, which no reader takes.</param>
    public static byte[] FileHeader(long directory)
    {
        byte[] bytes = new byte[FirstStrip];
        "II"u8.CopyTo(bytes);
        BinaryPrimitives.WriteUInt16LittleEndian(bytes.AsSpan(2), 43);
        BinaryPrimitives.WriteUInt16LittleEndian(bytes.AsSpan(4), 8);
        BinaryPrimitives.WriteInt64LittleEndian(bytes.AsSpan(8), directory);
        return bytes;
    }

    private byte[] Bytes(long at)
    {
        int tail = 8 + (EntryBytes * fields.Count) + 8;
        byte[] bytes = new byte[tail + fields.Values.Where(f => f.Value.Length > 8).Sum(f => Padded(f.Value.Length))];
        BinaryPrimitives.WriteInt64LittleEndian(bytes, fields.Count);
        int entry = 8;
        foreach ((ushort tag, (ushort type, long count, byte[] value)) in fields)
        {
            Span<byte> line = bytes.AsSpan(entry, EntryBytes);
            BinaryPrimitives.WriteUInt16LittleEndian(line, tag);
            BinaryPrimitives.WriteUInt16LittleEndian(line[2..], type);
            BinaryPrimitives.WriteInt64LittleEndian(line[4..], count);
            if (value.Length <= 8)
            {
                value.CopyTo(line[12..]);
            }
            else
            {
                BinaryPrimitives.WriteInt64LittleEndian(line[12..], at + tail);
                value.CopyTo(bytes.AsSpan(tail));
                tail += Padded(value.Length);
            }

            entry += EntryBytes;
        }

        return bytes;
    }

    private static int Padded(int length) => (length + 7) & ~7;

    private void Set(ushort tag, ushort type, long value) => Set(tag, type, [value]);

    private void Set(ushort tag, ushort type, ReadOnlySpan<long> values)
    {
        int size = TiffTags.SizeOf(type);
        byte[] bytes = new byte[checked(size * values.Length)];
        Span<byte> eight = stackalloc byte[8];
        for (int i = 0; i < values.Length; i++)
        {
            BinaryPrimitives.WriteInt64LittleEndian(eight, values[i]);
            eight[..size].CopyTo(bytes.AsSpan(i * size));
        }

        fields[tag] = (type, values.Length, bytes);
    }

    private void SetText(ushort tag, string text) => fields[tag] = (TiffTags.Ascii, text.Length, Encoding.ASCII.GetBytes(text));

    // Whole numbers stand as they are, others to a thousandth.
    private void SetRational(ushort tag, double value)
    {
        uint below = Math.Abs(value - Math.Round(value)) < 1e-9 ? 1u : 1000u;
        byte[] bytes = new byte[8];
        BinaryPrimitives.WriteUInt32LittleEndian(bytes, (uint)Math.Round(value * below));
        BinaryPrimitives.WriteUInt32LittleEndian(bytes.AsSpan(4), below);
        fields[tag] = (TiffTags.Rational, 1, bytes);
    }

    private static string SevenBit(string text) => string.Concat(text.Select(c => c is >= ' ' and <= '~' ? c : c == '×' ? 'x' : '?'));
}
