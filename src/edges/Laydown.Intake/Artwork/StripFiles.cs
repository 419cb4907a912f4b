using System.Collections;

namespace Laydown.Intake.Artwork;

/// <summary>The strips of a page, each in a folder of its own; gone with all files when disposed.</summary>
/// <param name="scratch">The job's folder.</param>
internal sealed class StripFiles(ScratchFolder scratch) : IReadOnlyList<SeparationStrip>, IDisposable
{
    // Readers see a strip only after its rows were told to have arrived, by when the new array stands here.
    private volatile SeparationStrip[] strips = [];

    /// <inheritdoc/>
    public int Count => strips.Length;

    /// <inheritdoc/>
    public SeparationStrip this[int index] => strips[index];

    /// <summary>A further strip, and its folder.</summary>
    public (SeparationStrip Strip, string Folder) Add(int columns, int rows)
    {
        string folder = Directory.CreateDirectory(scratch.File(Invariant($"strip-{strips.Length}"))).FullName;
        var strip = new SeparationStrip(folder, columns, rows);
        strips = [.. strips, strip];
        return (strip, folder);
    }

    /// <inheritdoc/>
    public IEnumerator<SeparationStrip> GetEnumerator() => strips.AsEnumerable().GetEnumerator();

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var strip in strips)
            strip.Dispose();
        scratch.Dispose();
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
