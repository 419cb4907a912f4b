using Laydown.Formats.TiffWriting;
using Laydown.Raster.Sheets;

namespace Laydown.Output.PressFiles;

/// <summary>Puts the dots of one layer of one sheet into a file for each ink, with a journal from which a broken-off make is gone on with.</summary>
internal sealed class DotSink : IDotSink, IDisposable
{
    private readonly IReadOnlyList<DotTiffWriter> writers;
    private readonly BandJournal journal;
    private readonly IReadOnlySet<int> kept;
    private readonly Action<DotBand> made;
    private readonly Dictionary<int, JournalBand> unwritten = [];
    private readonly Lock gate = new();

    private DotSink(
        IReadOnlyList<DotTiffWriter> writers, BandJournal journal, IReadOnlySet<int> kept, DotTotals totals, Action<DotBand> made)
    {
        this.writers = writers;
        this.journal = journal;
        this.kept = kept;
        this.made = made;
        Totals = totals;
    }

    /// <summary>Dots counted so far, those of kept bands included.</summary>
    public DotTotals Totals { get; }

    /// <summary>Bands that were there already.</summary>
    public int Kept => kept.Count;

    /// <summary>Opens the files: what an earlier make finished of them is read back and kept where it is as its journal says.</summary>
    /// <param name="paths">One file for each ink.</param>
    /// <param name="headers">What each says about itself.</param>
    /// <param name="journalPath">The journal.</param>
    /// <param name="pieces">Pieces on the sheet.</param>
    /// <param name="made">Told each band that is made, from several threads.</param>
    /// <param name="cancellation">Looked at for each strip that is read back.</param>
    public static DotSink Open(
        IReadOnlyList<string> paths, IReadOnlyList<DotHeader> headers, string journalPath, int pieces, Action<DotBand> made,
        CancellationToken cancellation)
    {
        int levels = 1 << headers[0].BitsPerDot;
        IReadOnlyDictionary<int, JournalBand> journaled = BandJournal.Read(journalPath, paths.Count, levels, pieces);
        IReadOnlySet<int> kept = Sound(paths, headers, journaled, cancellation);
        List<DotTiffWriter> writers = [];
        BandJournal? journal = null;
        try
        {
            for (int ink = 0; ink < paths.Count; ink++)
            {
                Dictionary<int, StripStamp> stamps = kept.ToDictionary(b => b, b => journaled[b].Stamps[ink]);
                writers.Add(kept.Count > 0 ? DotTiffWriter.Reopen(paths[ink], headers[ink], stamps) : DotTiffWriter.Create(paths[ink], headers[ink]));
            }

            journal = BandJournal.Append(journalPath);
            DotTotals totals = new(paths.Count, levels);
            foreach (int band in kept)
                totals.Add(journaled[band].Totals);
            return new(writers, journal, kept, totals, made);
        }
        catch
        {
            journal?.Dispose();
            writers.ForEach(w => w.Dispose());
            throw;
        }
    }

    /// <inheritdoc/>
    public bool Has(int band) => kept.Contains(band);

    /// <inheritdoc/>
    public void Take(DotBand band)
    {
        StripStamp[] stamps = new StripStamp[writers.Count];
        for (int ink = 0; ink < writers.Count; ink++)
            stamps[ink] = writers[ink].Write(band.Number, band.Dots.Plane(ink)[..(band.Rows * band.Dots.Stride)]);
        DotTotals counted = new(band.Totals.Inks, band.Totals.Levels);
        counted.Add(band.Totals);
        lock (gate)
        {
            Totals.Add(counted);
            unwritten[band.Number] = new(band.Number, stamps, counted);
            Journal();
        }

        made(band);
    }

    /// <summary>Writes the directories; the files are whole after this.</summary>
    public void Finish()
    {
        lock (gate)
            Journal();
        foreach (DotTiffWriter writer in writers)
            writer.Finish();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        journal.Dispose();
        foreach (DotTiffWriter writer in writers)
            writer.Dispose();
    }

    // A packed band may wait in memory for those before it: its line follows its bytes.
    private void Journal()
    {
        foreach (int band in unwritten.Keys.Where(b => writers.All(w => w.IsOnFile(b))).Order().ToList())
        {
            journal.Write(unwritten[band]);
            unwritten.Remove(band);
        }
    }

    private static IReadOnlySet<int> Sound(
        IReadOnlyList<string> paths, IReadOnlyList<DotHeader> headers, IReadOnlyDictionary<int, JournalBand> journaled, CancellationToken cancellation)
    {
        HashSet<int> sound = [.. journaled.Keys];
        HashSet<int>[] found = new HashSet<int>[paths.Count];
        if (sound.Count > 0)
        {
            AllCores.Run(
                paths.Count,
                () => 0,
                (ink, _) => found[ink] = [.. DotTiffWriter.SoundStrips(paths[ink], headers[ink], journaled.ToDictionary(b => b.Key, b => b.Value.Stamps[ink]), cancellation)],
                cancellation);
            foreach (HashSet<int> of in found)
                sound.IntersectWith(of);
        }

        return sound;
    }
}
