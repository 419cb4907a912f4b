using Laydown.Measures;

namespace Laydown.Formats.TiffWriting;

/// <summary>Reads the dots of one ink from a dot TIFF: any rectangle, from several threads at once.</summary>
/// <remarks>What the file claims is checked when it is opened; damage in packed strips shows when they are read.</remarks>
public sealed class DotTiffReader : IDisposable
{
    private readonly StripFile file;

    private DotTiffReader(StripFile file) => this.file = file;

    /// <summary>Dots across the scan.</summary>
    public int Columns => file.Columns;

    /// <summary>Dots along the feed.</summary>
    public int Rows => file.Rows;

    /// <summary>1 or 2.</summary>
    public int BitsPerDot => file.Bits;

    /// <summary>Dots per inch across; 0 where the file does not say.</summary>
    public double ScanDpi => file.ScanDpi;

    /// <summary>Dots per inch down; 0 where the file does not say.</summary>
    public double FeedDpi => file.FeedDpi;

    /// <summary>Rows of a strip: reading goes fastest along them.</summary>
    public int RowsPerStrip => file.RowsPerStrip;

    /// <summary>How strips are packed.</summary>
    public DotPacking Packing => file.Packing;

    /// <summary>Name of the ink; empty where the file does not say.</summary>
    public string InkName => file.InkNames.Count > 0 ? file.InkNames[0] : "";

    /// <summary>A line for people; may be empty.</summary>
    public string Description => file.Description;

    /// <summary>Opens a dot TIFF.</summary>
    /// <param name="path">Where it lies.</param>
    /// <returns>The open file, or what is wrong with it.</returns>
    public static Reading<DotTiffReader> Open(string path) => StripFile.Open(path).Then(file =>
    {
        if (file is { Bits: 1 or 2, Samples: 1, Photometric: TiffTags.MinIsWhite })
            return Reading.Of(new DotTiffReader(file));
        file.Dispose();
        return Reading.Refused<DotTiffReader>(new InputFault(
            file.Name, null, "BitsPerSample", Invariant($"{file.Samples} × {file.Bits} bits, photometric {file.Photometric}"),
            "1 or 2 bits of one ink, 0 = bare"));
    });

    /// <summary>Bytes that <paramref name="columns"/> dots take.</summary>
    public int BytesFor(int columns) => (int)((((long)columns * BitsPerDot) + 7) / 8);

    /// <summary>Part of one row, packed from the high bit down; bits behind the last dot are 0.</summary>
    /// <param name="row">Row from 0, from the top.</param>
    /// <param name="firstColumn">First column; any.</param>
    /// <param name="columns">How many, within the picture.</param>
    /// <param name="into">Takes <see cref="BytesFor"/> bytes.</param>
    /// <exception cref="ArgumentOutOfRangeException">The part lies outside the picture.</exception>
    /// <exception cref="InvalidDataException">The strip is damaged; the message names file and strip.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public void ReadRow(int row, int firstColumn, int columns, Span<byte> into)
    {
        Bounds.Within(row, 0, Rows - 1);
        Bounds.Within(firstColumn, 0, Columns - 1);
        Bounds.Within(columns, 1, Columns - firstColumn);
        into = into[..BytesFor(columns)];

        // Read the bytes that hold the part, then move it to the front of its first byte.
        long firstBit = (long)firstColumn * BitsPerDot;
        int shift = (int)(firstBit & 7), firstByte = (int)(firstBit >> 3);
        if (shift == 0)
        {
            file.ReadRow(row, firstByte, into);
        }
        else
        {
            int bytes = (int)((firstBit + ((long)columns * BitsPerDot) + 7) / 8) - firstByte;
            byte[] held = System.Buffers.ArrayPool<byte>.Shared.Rent(bytes + 1);
            held[bytes] = 0;
            file.ReadRow(row, firstByte, held.AsSpan(0, bytes));
            for (int i = 0; i < into.Length; i++)
                into[i] = (byte)((held[i] << shift) | (i + 1 < bytes ? held[i + 1] >> (8 - shift) : 0));
            System.Buffers.ArrayPool<byte>.Shared.Return(held);
        }

        int used = (int)(((long)columns * BitsPerDot) & 7);
        if (used != 0)
            into[^1] &= (byte)(0xFF00 >> used);
    }

    /// <inheritdoc/>
    public void Dispose() => file.Dispose();
}
