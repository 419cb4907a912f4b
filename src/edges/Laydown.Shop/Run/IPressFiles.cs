using Laydown.Measures;

namespace Laydown.Shop.Run;

/// <summary>Makes run folders: complete or absent.</summary>
public interface IPressFiles
{
    /// <summary>
    /// Makes <paramref name="runsFolder"/>/<i>run id</i> with contone TIFFs of each sheet and layer, previews, cut paths, drawings, set-up sheet and manifest.
    /// An earlier folder of that run is replaced only when the new one is whole.
    /// </summary>
    /// <returns>The files, or the faults (disk full, renderer missing); then no folder is left.</returns>
    Task<Reading<IReadOnlyList<ManifestEntry>>> MakeAsync(
        RunContext context, string runsFolder, IProgress<MakeProgress> progress, CancellationToken cancellation);
}
