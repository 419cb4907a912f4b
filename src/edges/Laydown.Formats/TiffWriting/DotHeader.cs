using Laydown.Measures;

namespace Laydown.Formats.TiffWriting;

/// <summary>What a dot TIFF of one ink says about itself.</summary>
/// <param name="Columns">Dots across the scan, at least 1.</param>
/// <param name="Rows">Dots along the feed, at least 1.</param>
/// <param name="BitsPerDot">1, or 2 for up to three sizes of drop.</param>
/// <param name="ScanDpi">Dots per inch across, over 0.</param>
/// <param name="FeedDpi">Dots per inch down, over 0; may differ from <paramref name="ScanDpi"/>.</param>
/// <param name="RowsPerStrip">Rows of a strip, at least 1; the last strip may be shorter.</param>
/// <param name="Packing">How strips are packed.</param>
/// <param name="InkName">Name of the ink; printable 7-bit characters.</param>
/// <param name="Description">A line for people.</param>
public sealed record DotHeader(
    int Columns, int Rows, int BitsPerDot, double ScanDpi, double FeedDpi, int RowsPerStrip, DotPacking Packing, string InkName,
    string Description)
{
    /// <summary>Most bytes of one strip as dots.</summary>
    internal const int MostStripBytes = 1 << 28;

    /// <summary>An ICC profile written into the file, or empty.</summary>
    public ReadOnlyMemory<byte> Icc { get; init; }

    /// <summary>Bytes of one row: dots from the high bit down, padded to whole bytes with bits 0.</summary>
    public int RowBytes => (int)((((long)Columns * BitsPerDot) + 7) / 8);

    /// <summary>How many strips.</summary>
    public int Strips => (int)(((long)Rows + RowsPerStrip - 1) / RowsPerStrip);

    /// <summary>Rows of a strip.</summary>
    /// <param name="strip">From 0.</param>
    public int RowsOf(int strip) => Math.Min(RowsPerStrip, Rows - (Bounds.Within(strip, 0, Strips - 1) * RowsPerStrip));

    /// <summary>Bytes of a strip as dots, before packing.</summary>
    /// <param name="strip">From 0.</param>
    public int BytesOf(int strip) => RowsOf(strip) * RowBytes;

    /// <summary>Bytes of the whole file where nothing is packed: strips, directory and tables.</summary>
    public long PlainFileBytes => ((DotDirectory.FirstStrip + ((long)Rows * RowBytes) + 7) & ~7L) + DotDirectory.BytesOf(Checked());

    /// <summary>The header, when every field is within its range.</summary>
    /// <exception cref="ArgumentException">A field is not; the message names it.</exception>
    public DotHeader Checked()
    {
        Bounds.Within(Columns, 1, int.MaxValue / 2);
        Bounds.Within(Rows, 1, int.MaxValue);
        Bounds.Within(BitsPerDot, 1, 2);
        Bounds.Within(ScanDpi, 1, 100_000);
        Bounds.Within(FeedDpi, 1, 100_000);
        Bounds.Within(RowsPerStrip, 1, Math.Max(1, MostStripBytes / RowBytes));
        if (!Enum.IsDefined(Packing))
            throw new ArgumentException(Invariant($"Packing: found {Packing}; wanted None, PackBits or Deflate."));
        if (string.IsNullOrWhiteSpace(InkName) || InkName.Any(c => c is < ' ' or > '~'))
            throw new ArgumentException(Invariant($"InkName: found \"{InkName}\"; wanted printable 7-bit characters."));
        return this;
    }
}
