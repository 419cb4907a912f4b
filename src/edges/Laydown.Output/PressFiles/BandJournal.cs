using System.Globalization;
using System.IO.Hashing;
using System.Text;
using Laydown.Formats.TiffWriting;
using Laydown.Raster.Sheets;

namespace Laydown.Output.PressFiles;

/// <summary>The journal of one layer of one sheet: a line for each band, appended when the band's bytes were written.</summary>
/// <remarks>
/// Each line ends with its own hash, so that a line cut short by a kill, or lost blocks after a loss of power, are known and left out. Nothing is
/// flushed to disk for it: a band counts as finished only after its bytes were read back and have the hash that stands here.
/// </remarks>
internal sealed class BandJournal : IDisposable
{
    private readonly FileStream stream;

    private BandJournal(FileStream stream) => this.stream = stream;

    /// <summary>Opens a journal for more lines; a half-written last line is closed off.</summary>
    public static BandJournal Append(string path)
    {
        FileStream stream = new(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.Read);
        stream.Seek(0, SeekOrigin.End);
        if (stream.Length > 0)
            stream.WriteByte((byte)'\n');
        return new(stream);
    }

    /// <summary>Reads the lines that are whole; of a band that was made twice the later one.</summary>
    /// <param name="path">Where; no file gives no bands.</param>
    /// <param name="inks">How many inks a line has.</param>
    /// <param name="levels">Kinds of dot.</param>
    /// <param name="pieces">Pieces there are.</param>
    public static IReadOnlyDictionary<int, JournalBand> Read(string path, int inks, int levels, int pieces)
    {
        Dictionary<int, JournalBand> bands = [];
        if (!File.Exists(path))
            return bands;
        foreach (string line in File.ReadLines(path, Encoding.ASCII))
        {
            int end = line.LastIndexOf(' ');
            if (end > 0 && line[(end + 1)..] == Sum(line[..end]) && Parsed(line[..end], inks, levels, pieces) is { } band)
                bands[band.Number] = band;
        }

        return bands;
    }

    /// <summary>Writes a band's line and hands it to the system. Not for several threads at once.</summary>
    public void Write(JournalBand band)
    {
        StringBuilder line = new();
        line.Append(CultureInfo.InvariantCulture, $"{band.Number}");
        foreach (StripStamp stamp in band.Stamps)
            line.Append(CultureInfo.InvariantCulture, $" {stamp.Bytes}:{Hex(stamp.Hash)}");
        line.Append(" all");
        for (int ink = 0; ink < band.Totals.Inks; ink++)
            Append(line, band.Totals.Of(ink));
        foreach (int piece in band.Totals.Pieces)
        {
            line.Append(CultureInfo.InvariantCulture, $" piece {piece}");
            for (int ink = 0; ink < band.Totals.Inks; ink++)
                Append(line, band.Totals.Of(piece, ink));
        }

        line.Append(' ').Append(Sum(line.ToString(0, line.Length - 1))).Append('\n');
        stream.Write(Encoding.ASCII.GetBytes(line.ToString()));
        stream.Flush();
    }

    /// <inheritdoc/>
    public void Dispose() => stream.Dispose();

    private static string Sum(string words) => Hex(XxHash64.HashToUInt64(Encoding.ASCII.GetBytes(words)));

    private static void Append(StringBuilder line, ReadOnlySpan<long> counts)
    {
        foreach (long count in counts)
            line.Append(CultureInfo.InvariantCulture, $" {count}");
    }

    // A line whose hash holds was written here; what does not fit the layer nevertheless is another layer's and is left out.
    private static JournalBand? Parsed(string line, int inks, int levels, int pieces)
    {
        string[] words = line.Split(' ');
        int at = 0;
        if (!TryNext(out long number) || words.Length < 2 + inks)
            return null;
        StripStamp[] stamps = new StripStamp[inks];
        for (int ink = 0; ink < inks; ink++)
        {
            string[] parts = words[at++].Split(':');
            if (parts.Length != 2 || !int.TryParse(parts[0], CultureInfo.InvariantCulture, out int bytes)
                || !ulong.TryParse(parts[1], NumberStyles.HexNumber, CultureInfo.InvariantCulture, out ulong hash))
                return null;
            stamps[ink] = new(bytes, hash);
        }

        DotTotals totals = new(inks, levels);
        for (bool whole = true; at < words.Length; whole = false)
        {
            if (words[at++] != (whole ? "all" : "piece"))
                return null;
            long piece = -1;
            if (!whole && (!TryNext(out piece) || piece < 0 || piece >= pieces))
                return null;
            for (int ink = 0; ink < inks; ink++)
            {
                long[] counts = new long[levels];
                for (int level = 0; level < levels; level++)
                {
                    if (!TryNext(out counts[level]))
                        return null;
                }

                if (whole)
                    totals.Add(ink, counts);
                else
                    totals.Add((int)piece, ink, counts);
            }
        }

        return new((int)number, stamps, totals);

        bool TryNext(out long value)
        {
            value = 0;
            return at < words.Length && long.TryParse(words[at++], CultureInfo.InvariantCulture, out value);
        }
    }

    private static string Hex(ulong hash) => hash.ToString("x16", CultureInfo.InvariantCulture);
}
