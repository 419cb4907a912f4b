using Laydown.Measures;
using Laydown.Shop.Artwork;
using Laydown.Shop.Run;

namespace Laydown.Output.PressFiles;

/// <summary>Makes run folders: complete or absent, with the SHA-256 of every file.</summary>
/// <remarks>
/// Everything is written in scratch, flushed to disk, then moved in place in one step. A sheet is never whole in memory: its bands are put
/// together from the pieces' planes, which lie in scratch files. A failure, a cancel or a kill leaves nothing in the runs' folder.
/// </remarks>
/// <param name="renderer">Renders customers' pages.</param>
/// <param name="documents">Writes the set-up sheet.</param>
/// <param name="clock">Gives the instant noted in the manifest.</param>
/// <param name="scratchFolder">Scratch, on the file system of the runs; made when missing.</param>
public sealed class PressFiles(IPageRenderer renderer, IRunDocuments documents, TimeProvider clock, string scratchFolder) : IPressFiles
{
    /// <summary>
    /// Pixels a sheet may have before the contone resolution is lowered to the next divisor of the mode's dpi: 80 million, a board of
    /// 1220 × 2440 mm at 120 ppi. Codes keep the resolution they need.
    /// </summary>
    public long PixelBudget { get; init; } = 80_000_000;

    /// <summary>Removes scratch that killed programs left behind; work that goes on elsewhere is let alone.</summary>
    public void Sweep() => RunFolder.Sweep(scratchFolder);

    /// <inheritdoc/>
    public async Task<Reading<IReadOnlyList<ManifestEntry>>> MakeAsync(
        RunContext context, string runsFolder, IProgress<MakeProgress> progress, CancellationToken cancellation)
    {
        RunMaker? maker = null;
        try
        {
            Sweep();
            using RunFolder folder = new(scratchFolder, context.Run.Id);
            folder.Create();
            Progress told = new(context.Run.Id, progress);
            maker = new(context, folder, ContoneResolution.For(context.Mode, context.Run.Sheets, context.Items, PixelBudget), told);
            Reading<int> written = await maker.WriteAsync(renderer, documents, cancellation);
            if (!written.IsTaken)
                return Reading.Refused<IReadOnlyList<ManifestEntry>>(written.Faults);
            IReadOnlyList<ManifestEntry> entries = maker.WriteManifest(clock.GetUtcNow(), cancellation);
            cancellation.ThrowIfCancellationRequested();
            folder.Publish(runsFolder, context.Run.Id);
            told.Tell("made", 100);
            return Reading.Of(entries);
        }
        catch (Exception e) when (DiskFault.IsFault(e))
        {
            return Reading.Refused<IReadOnlyList<ManifestEntry>>(DiskFault.Of(e, maker?.Current ?? context.Run.Id, scratchFolder));
        }
    }
}
