using Laydown.Measures;

namespace Laydown.Shop.Run;

/// <summary>Makes the dots of a run at the resolution of the press and puts them beside its other files.</summary>
public interface IDotFiles
{
    /// <summary>
    /// Makes one TIFF for each sheet, layer and ink and puts them into the run's folder in one step; earlier dots are replaced. A make that is
    /// cancelled, refused or killed leaves the folder as it was and what it made in scratch, from where it can be gone on with.
    /// </summary>
    /// <param name="context">The run.</param>
    /// <param name="wish">How they are wanted.</param>
    /// <param name="runsFolder">Folder of the runs; the run's own lies in it and is whole.</param>
    /// <param name="files">Files of the run's folder, dots among them or not.</param>
    /// <param name="progress">Told each step with the time that is left.</param>
    /// <param name="cancellation">Stops within a second.</param>
    /// <returns>All files of the folder, or why there are no dots (no room, disk, artwork).</returns>
    Task<Reading<IReadOnlyList<ManifestEntry>>> MakeAsync(
        RunContext context, DotsWish wish, string runsFolder, IReadOnlyList<ManifestEntry> files, IProgress<MakeProgress> progress,
        CancellationToken cancellation);
}
