using Laydown.Measures;
using Laydown.Shop.Artwork;
using Laydown.Shop.Run;

namespace Laydown.Output.PressFiles;

/// <summary>Makes the dots of runs: sheets at the resolution of the press, a file for each ink, gone on with after a kill.</summary>
/// <param name="stream">Renders customers' pages while they are read.</param>
/// <param name="clock">Gives the instant noted in the manifest, and measures the rate.</param>
/// <param name="scratchFolder">Scratch, on the file system of the runs; made when missing.</param>
public sealed class DotFiles(IPlateStream stream, TimeProvider clock, string scratchFolder) : IDotFiles
{
    /// <summary>How many bands are made at once; as many as there are cores.</summary>
    public int Workers { get; init; } = Environment.ProcessorCount;

    /// <summary>Free bytes of the file system of a folder.</summary>
    public Func<string, long> FreeBytes { get; init; } = folder => new DriveInfo(folder).AvailableFreeSpace;

    /// <inheritdoc/>
    public async Task<Reading<IReadOnlyList<ManifestEntry>>> MakeAsync(
        RunContext context, DotsWish wish, string runsFolder, IReadOnlyList<ManifestEntry> files, IProgress<MakeProgress> progress,
        CancellationToken cancellation)
    {
        string current = context.Run.Id;
        try
        {
            Reading<DotDrops> drops = DotDrops.Of(context.Mode, wish.Bits);
            Reading<DotPictures> pictures = drops.Then(_ => DotPictures.Of(context, stream, cancellation));
            if (!pictures.IsTaken)
                return Reading.Refused<IReadOnlyList<ManifestEntry>>(pictures.Faults);
            await using DotPictures all = pictures.Value;
            string identity = await DotIdentity.OfAsync(context, wish, cancellation);
            Reading<DotFolder> opened = DotFolder.Open(scratchFolder, context.Run.Id, identity, wish.Resume);
            if (!opened.IsTaken)
                return Reading.Refused<IReadOnlyList<ManifestEntry>>(opened.Faults);
            using DotFolder folder = opened.Value;
            DotMaker maker = new(context, wish, drops.Value, folder, all, new(context.Run.Id, progress), clock, Workers, name => current = name);
            Reading<int> made = await maker.MakeAsync(FreeBytes(scratchFolder), cancellation);
            return made.IsTaken
                ? Reading.Of(maker.Publish(Path.Combine(runsFolder, context.Run.Id), files, cancellation))
                : Reading.Refused<IReadOnlyList<ManifestEntry>>(made.Faults);
        }
        catch (Exception e) when (DiskFault.IsFault(e))
        {
            return Reading.Refused<IReadOnlyList<ManifestEntry>>(DiskFault.Of(e, current, scratchFolder));
        }
    }
}
