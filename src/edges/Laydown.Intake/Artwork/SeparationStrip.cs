using Laydown.Measures;
using Microsoft.Win32.SafeHandles;

namespace Laydown.Intake.Artwork;

/// <summary>One run of Ghostscript's separation device over some rows of a page: its plate files, read while they grow.</summary>
/// <param name="folder">Folder that the device writes <c>plate.tif</c> and <c>plate(Name).tif</c> into.</param>
/// <param name="columns">Pixels across.</param>
/// <param name="rows">Pixels down.</param>
internal sealed class SeparationStrip(string folder, int columns, int rows) : IDisposable
{
    // The picture of all inks together is of no use here: it is cut back each time that it has grown by so much, so that it takes no room.
    private const long CompositeBytes = 32 << 20;
    private readonly List<Plate> plates = [];
    private long compositeEnd;

    /// <summary>Names of the plates, process inks first; empty until the first row is there.</summary>
    public IReadOnlyList<string> Names => [.. plates.Select(p => p.Name)];

    /// <summary>Rows that all plates have.</summary>
    public int Arrived()
    {
        if (plates.Count == 0 && !Open())
            return 0;
        CutComposite();
        long least = plates.Min(p => (RandomAccess.GetLength(p.File) - p.FirstRow) / columns);
        return (int)Math.Clamp(least, 0, rows);
    }

    /// <summary>What is wrong with the finished files: nothing where every row lies where it was read.</summary>
    public InputFault? Damage(string file, int page) => plates.Count == 0
        ? new(file, page, "plates", "none written", "the plates of the page")
        : plates.Where(p => !TiffLayout.HasRowsAt(p.File, p.FirstRow, (long)columns * rows))
            .Select(p => new InputFault(file, page, Invariant($"plate {p.Name}"), "rows that do not follow one another", "Ghostscript 10, which writes uncompressed plates in one piece"))
            .FirstOrDefault();

    /// <summary>Part of a row of one plate, as Ghostscript writes it: 0 = full ink. The row must have arrived.</summary>
    public void Read(int plate, int row, int firstColumn, Span<byte> into) =>
        Positional.Fill(plates[plate].File, into, plates[plate].FirstRow + ((long)row * columns) + firstColumn);

    /// <inheritdoc/>
    public void Dispose() => plates.ForEach(p => p.File.Dispose());

    /// <summary>Opens the plates once the first one has its first row: all files have been made by then.</summary>
    private bool Open()
    {
        if (Begun(Path.Combine(folder, "plate(" + ImagePlates.Process[0] + ").tif")) is null)
            return false;
        List<(string Name, string Path)> all =
            [.. ImagePlates.Process.Select(p => (p, Path.Combine(folder, "plate(" + p + ").tif"))), .. PdfPlates.Named(folder)];
        List<Plate> opened = [.. all.Select(p => (p.Name, Begun: Begun(p.Path))).Where(p => p.Begun is not null).Select(p => p.Begun! with { Name = p.Name })];
        if (opened.Count == all.Count)
            plates.AddRange(opened);
        else
            opened.ForEach(p => p.File.Dispose());
        return plates.Count > 0;
    }

    private Plate? Begun(string path)
    {
        if (!File.Exists(path))
            return null;
        var file = File.OpenHandle(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        if (TiffLayout.FirstRow(file) is { } first && RandomAccess.GetLength(file) >= first + columns)
            return new(path, file, first);
        file.Dispose();
        return null;
    }

    private void CutComposite()
    {
        var composite = new FileInfo(Path.Combine(folder, "plate.tif"));
        if (!composite.Exists || composite.Length < compositeEnd + CompositeBytes)
            return;
        using var file = File.OpenHandle(composite.FullName, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite | FileShare.Delete);
        if (TiffLayout.FirstRow(file) is not { } first)
            return;
        compositeEnd = composite.Length;
        RandomAccess.SetLength(file, first);
    }

    private sealed record Plate(string Name, SafeFileHandle File, long FirstRow);
}
