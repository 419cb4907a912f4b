using Laydown.Measures;

namespace Laydown.Formats.TiffWriting;

/// <summary>Reads laydown of all inks from a contone press file: any part of a row, from several threads at once.</summary>
public sealed class ContoneTiffReader : IDisposable
{
    private readonly StripFile file;

    private ContoneTiffReader(StripFile file) => this.file = file;

    /// <summary>Pixels across.</summary>
    public int Columns => file.Columns;

    /// <summary>Pixels down.</summary>
    public int Rows => file.Rows;

    /// <summary>How many inks.</summary>
    public int Inks => file.Samples;

    /// <summary>Names of the inks in order; may be fewer than the inks where the file does not say.</summary>
    public IReadOnlyList<string> InkNames => file.InkNames;

    /// <summary>Resolution across, ppi; 0 where the file does not say.</summary>
    public double Ppi => file.ScanDpi;

    /// <summary>Rows of a strip: reading goes fastest along them.</summary>
    public int RowsPerStrip => file.RowsPerStrip;

    /// <summary>Opens a contone press file.</summary>
    /// <param name="path">Where it lies.</param>
    /// <returns>The open file, or what is wrong with it.</returns>
    public static Reading<ContoneTiffReader> Open(string path) => StripFile.Open(path).Then(file =>
    {
        if (file is { Bits: 8, Photometric: TiffTags.Separated })
            return Reading.Of(new ContoneTiffReader(file));
        file.Dispose();
        return Reading.Refused<ContoneTiffReader>(new InputFault(
            file.Name, null, "BitsPerSample", Invariant($"{file.Samples} × {file.Bits} bits, photometric {file.Photometric}"),
            "8 bits of separated inks"));
    });

    /// <summary>Part of one row: pixel after pixel, one byte for each ink, 0 = bare, 255 = full.</summary>
    /// <param name="row">Row from 0, from the top.</param>
    /// <param name="firstColumn">First column.</param>
    /// <param name="into">Takes as many pixels as it has room for, within the picture.</param>
    /// <exception cref="ArgumentOutOfRangeException">The part lies outside the picture.</exception>
    /// <exception cref="InvalidDataException">The strip is damaged; the message names file and strip.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public void ReadRow(int row, int firstColumn, Span<byte> into)
    {
        Bounds.Within(row, 0, Rows - 1);
        Bounds.Within(firstColumn, 0, Columns - 1);
        Bounds.Within(into.Length / Inks, 1, Columns - firstColumn);
        file.ReadRow(row, firstColumn * Inks, into);
    }

    /// <inheritdoc/>
    public void Dispose() => file.Dispose();
}
