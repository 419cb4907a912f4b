using System.Globalization;
using System.IO.Compression;
using BitMiracle.LibTiff.Classic;

namespace Laydown.Formats.TiffWriting;

/// <summary>Writes a contone BigTIFF of any number of inks, 8 bits, band by band: PhotometricInterpretation Separated, InkSet 2, InkNames, strips.</summary>
/// <remarks>
/// Strips are packed with Deflate by the platform's own code on several cores and handed to the TIFF library as they are: its managed
/// Deflate does 1.6 million pixels a second, this some hundred. Equal pixels and header give equal bytes. Not for several threads at once.
/// </remarks>
public sealed class ContoneTiffWriter : IDisposable
{
    private const int StripsAtOnce = 4;

    private readonly ContoneHeader header;
    private readonly StreamForTiff target;
    private readonly Tiff tiff;
    private int rowsWritten;

    /// <summary>Starts a file.</summary>
    /// <param name="stream">Empty, writable, seekable; stays the caller's.</param>
    /// <param name="name">File name for messages.</param>
    /// <param name="header">What the file says about itself.</param>
    /// <exception cref="ArgumentException">The header is out of range.</exception>
    /// <exception cref="IOException">The stream or the TIFF library refused.</exception>
    public ContoneTiffWriter(Stream stream, string name, ContoneHeader header)
    {
        this.header = header.Checked();
        target = new(stream);
        Tiff.SetErrorHandler(new QuietTiffErrors());
        tiff = Guarded(() => Tiff.ClientOpen(name, "w8", target, target)) ?? throw Refusal("opening");
        WriteHeader();
    }

    /// <summary>Rows that <see cref="WriteBand"/> takes at once; the last band may be shorter.</summary>
    public int BandRows => Math.Min(header.Rows, header.RowsPerStrip * StripsAtOnce);

    /// <summary>Writes the next rows.</summary>
    /// <param name="pixels">Rows from the top, pixel after pixel, one byte for each ink: 0 = bare, 255 = full.</param>
    /// <param name="rows"><see cref="BandRows"/>, or what is left of the picture.</param>
    /// <exception cref="ArgumentException">The band has another height, or too few bytes.</exception>
    /// <exception cref="IOException">The stream or the TIFF library refused.</exception>
    public void WriteBand(byte[] pixels, int rows)
    {
        if (rows != Math.Min(BandRows, header.Rows - rowsWritten) || rows == 0)
            throw new ArgumentException(Invariant($"Rows: found {rows}; wanted {Math.Min(BandRows, header.Rows - rowsWritten)}."), nameof(rows));
        if (pixels.Length < (long)rows * header.RowBytes)
            throw new ArgumentException(Invariant($"Pixels: found {pixels.Length} bytes; wanted {(long)rows * header.RowBytes}."), nameof(pixels));

        // Pack the strips of the band side by side, then write them in order.
        int strips = ((rows - 1) / header.RowsPerStrip) + 1;
        byte[][] packed = new byte[strips][];
        Parallel.For(0, strips, s => packed[s] = Packed(pixels, s * header.RowsPerStrip, rows));
        for (int s = 0; s < strips; s++)
        {
            int strip = (rowsWritten / header.RowsPerStrip) + s;
            Require(Guarded(() => tiff.WriteRawStrip(strip, packed[s], 0, packed[s].Length)) == packed[s].Length, "writing a strip");
        }

        rowsWritten += rows;
    }

    /// <summary>Writes the directory; the file is whole after this.</summary>
    /// <exception cref="InvalidOperationException">Rows are missing.</exception>
    /// <exception cref="IOException">The stream or the TIFF library refused.</exception>
    public void Finish()
    {
        if (rowsWritten != header.Rows)
            throw new InvalidOperationException(Invariant($"Rows: found {rowsWritten} written; wanted {header.Rows}."));
        Require(Guarded(tiff.WriteDirectory), "writing the directory");
    }

    /// <summary>Lets go of the library; what was not finished stays unreadable.</summary>
    public void Dispose()
    {
        try
        {
            tiff.Dispose();
        }
        catch (IOException) when (target.Failure is not null)
        {
            // The same failure was already thrown where it happened.
        }
    }

    private byte[] Packed(byte[] pixels, int firstRow, int bandRows)
    {
        int rows = Math.Min(header.RowsPerStrip, bandRows - firstRow);
        using MemoryStream packed = new();
        using (ZLibStream deflate = new(packed, CompressionLevel.Fastest, leaveOpen: true))
            deflate.Write(pixels, firstRow * header.RowBytes, rows * header.RowBytes);
        return packed.ToArray();
    }

    private void WriteHeader()
    {
        Set(TiffTag.IMAGEWIDTH, header.Columns);
        Set(TiffTag.IMAGELENGTH, header.Rows);
        Set(TiffTag.BITSPERSAMPLE, 8);
        Set(TiffTag.SAMPLESPERPIXEL, header.InkNames.Count);
        Set(TiffTag.PHOTOMETRIC, Photometric.SEPARATED);
        Set(TiffTag.PLANARCONFIG, PlanarConfig.CONTIG);
        Set(TiffTag.ORIENTATION, Orientation.TOPLEFT);
        Set(TiffTag.COMPRESSION, Compression.ADOBE_DEFLATE);
        Set(TiffTag.ROWSPERSTRIP, header.RowsPerStrip);
        Set(TiffTag.INKSET, InkSet.MULTIINK);
        Set(TiffTag.NUMBEROFINKS, header.InkNames.Count);
        string names = string.Concat(header.InkNames.Select(n => n + "\0"));
        Set(TiffTag.INKNAMES, names.Length, names);
        Set(TiffTag.RESOLUTIONUNIT, ResUnit.INCH);
        Set(TiffTag.XRESOLUTION, header.Ppi);
        Set(TiffTag.YRESOLUTION, header.Ppi);
        Set(TiffTag.SOFTWARE, "Laydown");
        Set(TiffTag.IMAGEDESCRIPTION, SevenBit(header.Description));
        if (header.Instant is { } instant)
            Set(TiffTag.DATETIME, instant.UtcDateTime.ToString("yyyy:MM:dd HH:mm:ss", CultureInfo.InvariantCulture));
    }

    private void Set(TiffTag tag, params object[] values) => Require(tiff.SetField(tag, values), Invariant($"setting {tag}"));

    private static string SevenBit(string text) => string.Concat(text.Select(c => c is >= ' ' and <= '~' ? c : c == '×' ? 'x' : '?'));

    private void Require(bool done, string step)
    {
        if (!done)
            throw Refusal(step);
    }

    private IOException Refusal(string step) => target.Failure is { } failure
        ? new(failure.Message, failure.HResult)
        : new(Invariant($"TIFF, {step}: {target.Complaint}"));

    // The library turns some stream failures into a false and lets others through: both end as the stream's own exception.
    private T Guarded<T>(Func<T> action)
    {
        T result = action();
        return target.Failure is null ? result : throw Refusal("writing");
    }
}
