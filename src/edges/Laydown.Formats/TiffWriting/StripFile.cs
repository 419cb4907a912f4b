using Laydown.Measures;
using Microsoft.Win32.SafeHandles;

namespace Laydown.Formats.TiffWriting;

/// <summary>A press file in strips, open for reading from several threads: size, places of the strips, rows.</summary>
/// <remarks>Unpacked strips are read by position; the last packed strip that was asked for is kept unpacked.</remarks>
internal sealed class StripFile : IDisposable
{
    private const int MostSide = 4_000_000, MostSamples = 64, MostStripBytes = 1 << 28;

    private readonly SafeFileHandle file;
    private readonly Lock gate = new();
    private long[] offsets = [], lengths = [];
    private byte[] kept = [];
    private int keptStrip = -1;

    private StripFile(SafeFileHandle file, string name)
    {
        this.file = file;
        Name = name;
    }

    public string Name { get; }

    public int Columns { get; private set; }

    public int Rows { get; private set; }

    public int Bits { get; private set; }

    public int Samples { get; private set; }

    public int Photometric { get; private set; }

    public int RowsPerStrip { get; private set; }

    public DotPacking Packing { get; private set; }

    public double ScanDpi { get; private set; }

    public double FeedDpi { get; private set; }

    public IReadOnlyList<string> InkNames { get; private set; } = [];

    public string Description { get; private set; } = "";

    /// <summary>Bytes of one row.</summary>
    public int RowBytes => (int)((((long)Columns * Bits * Samples) + 7) / 8);

    /// <summary>Opens a file and checks all that its directory claims.</summary>
    /// <param name="path">Where it lies.</param>
    /// <returns>The open file, or why it cannot be read.</returns>
    public static Reading<StripFile> Open(string path)
    {
        string name = Path.GetFileName(path);
        SafeFileHandle? file = null;
        StripFile? strips = null;
        try
        {
            file = File.OpenHandle(path);
            strips = new(file, name);
            Reading<StripDirectory> directory = StripDirectory.Read(file, name);
            InputFault? fault = directory.IsTaken ? strips.Take(directory.Value) : directory.Faults[0];
            if (fault is null)
                return Reading.Of(strips);
            file.Dispose();
            return Reading.Refused<StripFile>(fault);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            file?.Dispose();
            return Reading.Refused<StripFile>(new InputFault(name, null, "file", e.Message, "a file that can be read"));
        }
    }

    /// <summary>Bytes of part of one row, from a byte of the row on.</summary>
    /// <exception cref="InvalidDataException">The strip is damaged; the message names file and strip.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public void ReadRow(int row, int firstByte, Span<byte> into)
    {
        int strip = Bounds.Within(row, 0, Rows - 1) / RowsPerStrip;
        long within = ((long)(row - (strip * RowsPerStrip)) * RowBytes) + firstByte;
        if (Packing == DotPacking.None)
        {
            if (!FileBytes.TryRead(file, into, offsets[strip] + within))
                throw Damage(strip, "the file became shorter while it was read");
            return;
        }

        lock (gate)
        {
            if (keptStrip != strip)
                Unpack(strip);
            kept.AsSpan((int)within, into.Length).CopyTo(into);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => file.Dispose();

    private void Unpack(int strip)
    {
        keptStrip = -1;
        byte[] packed = new byte[lengths[strip]];
        if (!FileBytes.TryRead(file, packed, offsets[strip]))
            throw Damage(strip, "the file became shorter while it was read");
        int bytes = RowsOf(strip) * RowBytes;
        if (kept.Length < bytes)
            kept = new byte[bytes];
        try
        {
            PackedStrips.Unpack(Packing, packed, kept.AsSpan(0, bytes));
        }
        catch (InvalidDataException e)
        {
            throw Damage(strip, e.Message);
        }

        keptStrip = strip;
    }

    private int RowsOf(int strip) => Math.Min(RowsPerStrip, Rows - (strip * RowsPerStrip));

    private InvalidDataException Damage(int strip, string how) => new(Invariant($"{Name}, strip {strip}: {how}"));

    // Every field that says how pixels lie, first those without which nothing can be said, then the strips.
    private InputFault? Take(StripDirectory directory)
    {
        long columns = directory.Number(TiffTags.ImageWidth, 0), rows = directory.Number(TiffTags.ImageLength, 0);
        if (columns is < 1 or > MostSide || rows is < 1 or > MostSide)
            return Fault("ImageWidth, ImageLength", Invariant($"{columns} × {rows}"), Invariant($"1 to {MostSide} on each side"));
        long samples = directory.Number(TiffTags.SamplesPerPixel, 1);
        if (samples is < 1 or > MostSamples)
            return Fault("SamplesPerPixel", Invariant($"{samples}"), Invariant($"1 to {MostSamples}"));
        long[]? bits = directory.Numbers(TiffTags.BitsPerSample, samples);
        if (bits is null || bits.Any(b => b != bits[0]) || bits[0] is not (1 or 2 or 8) || (bits[0] < 8 && samples > 1))
            return Fault("BitsPerSample", bits is null ? "no such list" : string.Join(' ', bits), "1 or 2 for one ink, or 8 for each ink");
        if (PackingOf(directory.Number(TiffTags.Compression, 1)) is not { } packing)
            return Fault("Compression", Invariant($"{directory.Number(TiffTags.Compression, 1)}"), "1, 8 or 32773: none, Deflate or PackBits");
        foreach ((ushort tag, string field, long only) in new[]
            {
                (TiffTags.FillOrder, "FillOrder", 1L), (TiffTags.Orientation, "Orientation", 1L), (TiffTags.Predictor, "Predictor", 1L),
                (TiffTags.PlanarConfiguration, "PlanarConfiguration", 1L), (TiffTags.SampleFormat, "SampleFormat", 1L),
            })
        {
            if (directory.Has(tag) && directory.Number(tag, only) != only && !(tag == TiffTags.SampleFormat && samples > 1))
                return Fault(field, Invariant($"{directory.Number(tag, only)}"), Invariant($"{only}"));
        }

        if (directory.Has(TiffTags.TileWidth))
            return Fault("TileWidth", "tiles", "strips");
        (Columns, Rows, Samples, Bits, Packing) = ((int)columns, (int)rows, (int)samples, (int)bits[0], packing);
        Photometric = (int)directory.Number(TiffTags.Photometric, -1);
        (ScanDpi, FeedDpi) = (directory.Fraction(TiffTags.XResolution), directory.Fraction(TiffTags.YResolution));
        InkNames = directory.Texts(TiffTags.InkNames);
        Description = directory.Texts(TiffTags.ImageDescription) is [string first, ..] ? first : "";
        return TakeStrips(directory);
    }

    private InputFault? TakeStrips(StripDirectory directory)
    {
        long perStrip = directory.Number(TiffTags.RowsPerStrip, Rows);
        if (perStrip < 1)
            return Fault("RowsPerStrip", Invariant($"{perStrip}"), "at least 1");
        RowsPerStrip = (int)Math.Min(perStrip, Rows);
        if (Packing != DotPacking.None && (long)RowsPerStrip * RowBytes > MostStripBytes)
        {
            return Fault(
                "RowsPerStrip", Invariant($"{RowsPerStrip} rows of {RowBytes} bytes"), Invariant($"packed strips of at most {MostStripBytes} bytes"));
        }

        int strips = (int)(((long)Rows + RowsPerStrip - 1) / RowsPerStrip);
        if (directory.Numbers(TiffTags.StripOffsets, strips) is not { } starts)
            return Fault("StripOffsets", "no list of that length within the file", Invariant($"{strips} offsets"));
        if (directory.Numbers(TiffTags.StripByteCounts, strips) is not { } counts)
            return Fault("StripByteCounts", "no list of that length within the file", Invariant($"{strips} lengths"));
        (offsets, lengths) = (starts, counts);
        for (int strip = 0; strip < strips; strip++)
        {
            if (StripFault(strip, directory.FileBytes) is { } fault)
                return fault;
        }

        return Overlap();
    }

    private InputFault? StripFault(int strip, long fileBytes)
    {
        long wanted = (long)RowsOf(strip) * RowBytes;
        if (offsets[strip] <= 0 || lengths[strip] <= 0)
            return Fault(Invariant($"strip {strip}"), "nothing: it is missing", "every strip of the picture");
        if (offsets[strip] < 16 || lengths[strip] > fileBytes || offsets[strip] > fileBytes - lengths[strip])
            return Fault(Invariant($"strip {strip}"), Invariant($"{lengths[strip]} bytes at {offsets[strip]} of {fileBytes}"), "a strip within the file");
        bool plain = Packing == DotPacking.None;
        bool odd = plain ? lengths[strip] != wanted : lengths[strip] > (2 * wanted) + 1024;
        return odd
            ? Fault(Invariant($"strip {strip}"), Invariant($"{lengths[strip]} bytes"), Invariant($"{(plain ? "" : "packed from ")}{wanted} bytes"))
            : null;
    }

    private InputFault? Overlap()
    {
        int[] order = [.. Enumerable.Range(0, offsets.Length)];
        Array.Sort(order, (one, other) => offsets[one].CompareTo(offsets[other]));
        for (int i = 1; i < order.Length; i++)
        {
            if (offsets[order[i - 1]] + lengths[order[i - 1]] > offsets[order[i]])
                return Fault(Invariant($"strip {order[i]}"), Invariant($"bytes of strip {order[i - 1]}"), "strips that do not overlap");
        }

        return null;
    }

    private static DotPacking? PackingOf(long code) => code switch
    {
        TiffTags.PackedNot => DotPacking.None,
        TiffTags.PackedBits => DotPacking.PackBits,
        TiffTags.PackedDeflate or TiffTags.PackedDeflateOld => DotPacking.Deflate,
        _ => null,
    };

    private InputFault Fault(string field, string found, string wanted) => new(Name, null, field, found, wanted);
}
