using Laydown.Formats.TiffWriting;
using Laydown.Measures;
using Laydown.Raster.Screens;

namespace Laydown.Output.PressFiles;

/// <summary>Rows of a press file, contone or dots, as one byte for each ink of each pixel.</summary>
internal sealed class PressRows : IDisposable
{
    private readonly ContoneTiffReader? contone;
    private readonly DotTiffReader? dots;
    private readonly byte[] packed;

    private PressRows(ContoneTiffReader? contone, DotTiffReader? dots)
    {
        (this.contone, this.dots) = (contone, dots);
        packed = new byte[dots?.BytesFor(dots.Columns) ?? (contone!.Columns * contone.Inks)];
    }

    /// <summary>Pixels or dots across.</summary>
    public int Columns => contone?.Columns ?? dots!.Columns;

    /// <summary>Pixels or dots down.</summary>
    public int Rows => contone?.Rows ?? dots!.Rows;

    /// <summary>Names of its inks.</summary>
    public IReadOnlyList<string> Inks => contone?.InkNames ?? [dots!.InkName];

    private int Bits => dots?.BitsPerDot ?? 8;

    private (double Scan, double Feed) Fineness => dots is null ? (contone!.Ppi, contone.Ppi) : (dots.ScanDpi, dots.FeedDpi);

    /// <summary>Opens a file, or tells what is wrong with it.</summary>
    public static Reading<PressRows> Open(string path)
    {
        Reading<DotTiffReader> dots = DotTiffReader.Open(path);
        return dots.IsTaken
            ? Reading.Of(new PressRows(null, dots.Value))
            : ContoneTiffReader.Open(path).Then(contone => Reading.Of(new PressRows(contone, null)));
    }

    /// <summary>Whether two files can be compared pixel by pixel: as many pixels, as fine, of the same inks by name.</summary>
    public bool SameShape(PressRows other) =>
        (Columns, Rows, Bits, contone?.Inks, Fineness) == (other.Columns, other.Rows, other.Bits, other.contone?.Inks, other.Fineness) && Inks.SequenceEqual(other.Inks);

    /// <summary>Reads a row and gives it as it lies in the file: the quickest way to see that two are alike.</summary>
    /// <exception cref="InvalidDataException">The file is damaged.</exception>
    public ReadOnlySpan<byte> Read(int row)
    {
        if (dots is null)
            contone!.ReadRow(row, 0, packed);
        else
            dots.ReadRow(row, 0, Columns, packed);
        return packed;
    }

    /// <summary>Adds the values of the row that was read, ink by ink.</summary>
    public void AddTo(Span<long> sums)
    {
        if (dots is not null)
        {
            Span<long> counts = stackalloc long[1 << Bits];
            counts.Clear();
            DotCounts.Add(packed, Bits, 0, Columns, counts);
            for (int code = 1; code < counts.Length; code++)
                sums[0] += code * counts[code];
            return;
        }

        for (int at = 0; at < packed.Length; at++)
            sums[at % sums.Length] += packed[at];
    }

    /// <summary>The row that was read: pixel after pixel, ink after ink, a byte each.</summary>
    public void Unpack(Span<byte> values)
    {
        if (dots is null)
        {
            packed.CopyTo(values);
            return;
        }

        int each = 8 / Bits, mask = (1 << Bits) - 1;
        for (int x = 0; x < Columns; x++)
            values[x] = (byte)((packed[x / each] >> ((each - 1 - (x % each)) * Bits)) & mask);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        contone?.Dispose();
        dots?.Dispose();
    }
}
