using Laydown.Formats.Pdf;
using Laydown.Measures;
using Laydown.Shop.Artwork;

namespace Laydown.Intake.Artwork;

/// <summary>Renders a PDF page to plates by Ghostscript's own separation device, in a limited child process, and lets others read while it renders.</summary>
/// <remarks>
/// The device appends uncompressed rows to one file a plate; the readers read those files themselves, so nothing is copied and nothing held. Devices that
/// write raw CMYK to a pipe are quicker, but are not equal to it: pictures differ by up to a hundred codes, shadings by one.
/// </remarks>
/// <param name="limits">Program and limits.</param>
internal sealed class PdfPlates(IntakeLimits limits)
{
    private const int LookMs = 4;

    /// <summary>Begins to render a page; returns when its plates are known.</summary>
    public async Task<Reading<OpenPlates>> OpenAsync(RenderRequest request, CancellationToken cancellation)
    {
        var boxes = PdfReader.Boxes(request.ArtworkPath, request.Page, PdfReading.Limits(limits));
        if (!boxes.IsTaken)
            return Reading.Refused<OpenPlates>(boxes.Faults);

        string file = Path.GetFileName(request.ArtworkPath);
        var placing = Placing.Of(request, boxes.Value);
        var scratch = new ScratchFolder(limits.ScratchFolder);
        var arrived = new ArrivedRows();
        var strips = new StripFiles(scratch);
        int stripRows = (int)Math.Clamp(limits.StripPixels / placing.Frame.Width, 1, placing.Frame.Height);
        var job = new PlateJob(
            file, request.Page, placing.Frame.FilledHeight, arrived, strips,
            (begun, stop) => RenderAsync(request, placing, stripRows, strips, arrived, begun, stop), cancellation);
        await job.Begun;
        if (strips.Count == 0 || strips[0].Names.Count == 0 || job.Ended.IsCompleted)
        {
            // It has ended already: in faults, cancelled, or a small page done.
            var faults = await FaultsAsync(job);
            if (faults.Count > 0)
                return Reading.Refused<OpenPlates>(faults);
        }

        var source = new FramedPlates(new GrowingPlates(strips[0].Names.Count, placing.Frame, stripRows, strips, arrived), placing.Frame);
        return Reading.Of(new OpenPlates(strips[0].Names, source, job.Ended, job.DisposeAsync));
    }

    /// <summary>Device and colour: RGB goes through the profile, DeviceCMYK is taken as meant for it and stays as it is.</summary>
    public static IReadOnlyList<string> Separations(string profilePath) =>
    [
        "-sDEVICE=tiffsep", Invariant($"-dMaxSpots={Ghostscript.MaxSpots}"), "-sCompression=none",
        "-sOutputICCProfile=" + Path.GetFullPath(profilePath), "-sDefaultCMYKProfile=" + Path.GetFullPath(profilePath),
        "-dRenderIntent=1", "-dBlackPtComp=1",
        "--permit-file-read=" + Path.GetFullPath(profilePath),
    ];

    /// <summary>Named plates in the folder, in the order of their names; odd characters in file names come as percent codes.</summary>
    public static IReadOnlyList<(string Name, string Path)> Named(string folder) =>
    [
        .. Directory.GetFiles(folder, "plate(*).tif")
            .Select(p => (Name: Uri.UnescapeDataString(Path.GetFileName(p)["plate(".Length..^").tif".Length]), Path: p))
            .Where(p => !ImagePlates.Process.Contains(p.Name))
            .OrderBy(p => p.Name, StringComparer.Ordinal),
    ];

    private static async Task<IReadOnlyList<InputFault>> FaultsAsync(PlateJob job)
    {
        try
        {
            var faults = await job.Ended;
            if (faults.Count > 0)
                await job.DisposeAsync();
            return faults;
        }
        catch
        {
            await job.DisposeAsync();
            throw;
        }
    }

    /// <summary>Renders strip after strip and tells the rows as the files grow.</summary>
    private async Task<IReadOnlyList<InputFault>> RenderAsync(
        RenderRequest request, Placing placing, int stripRows, StripFiles strips, ArrivedRows arrived, Action begun, CancellationToken cancellation)
    {
        var frame = placing.Frame;
        string file = Path.GetFileName(request.ArtworkPath);
        for (int first = 0; first < frame.Bottom; first += stripRows)
        {
            int rows = Math.Min(stripRows, frame.Height - first);
            var (strip, folder) = strips.Add(frame.Width, rows);
            var (options, before) = placing.Rows(first, rows);
            var run = new Ghostscript(limits).RunAsync(
                request.ArtworkPath, request.Page, [.. Separations(request.ProfilePath), .. options, "-sOutputFile=plate.tif"], before, folder, cancellation);
            while (!run.IsCompleted)
            {
                Tell(strip, first, frame, arrived, begun);
                await Task.WhenAny(run, Task.Delay(LookMs, CancellationToken.None));
            }

            var faults = await run;
            if (faults.Count > 0)
                return faults;
            Tell(strip, first, frame, arrived, begun);
            if (strip.Damage(file, request.Page) is { } damage)
                return [damage];
            if (!strip.Names.SequenceEqual(strips[0].Names))
                return [new(file, request.Page, "plates", string.Join(", ", strip.Names), string.Join(", ", strips[0].Names))];
        }

        return [];
    }

    private static void Tell(SeparationStrip strip, int first, PixelFrame frame, ArrivedRows arrived, Action begun)
    {
        int rows = strip.Arrived();
        if (rows == 0)
            return;
        arrived.Grow(Math.Clamp(first + rows - frame.Top, 0, frame.FilledHeight));
        begun();
    }
}
