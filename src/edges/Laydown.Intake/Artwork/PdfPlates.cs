using Laydown.Artwork.Pages;
using Laydown.Formats.Images;
using Laydown.Formats.Pdf;
using Laydown.Measures;
using Laydown.Shop.Artwork;

namespace Laydown.Intake.Artwork;

/// <summary>Renders a PDF page to plates by Ghostscript's own separation device, in a limited child process.</summary>
/// <param name="limits">Program and limits.</param>
internal sealed class PdfPlates(IntakeLimits limits)
{
    /// <summary>Writes the plates of a page to a raw file.</summary>
    public async Task<Reading<RenderedPage>> WriteAsync(RenderRequest request, string rawPath, CancellationToken cancellation)
    {
        var boxes = PdfReader.Boxes(request.ArtworkPath, request.Page, PdfReading.Limits(limits));
        if (!boxes.IsTaken)
            return Reading.Refused<RenderedPage>(boxes.Faults);

        using var scratch = new ScratchFolder(limits.ScratchFolder);
        var placing = Placing.Of(request, boxes.Value);
        List<string> options = [.. Separations(request.ProfilePath), .. placing.Options, "-sOutputFile=plate.tif"];
        var faults = await new Ghostscript(limits).RunAsync(request.ArtworkPath, request.Page, options, placing.Before, scratch.FullPath, cancellation);
        if (faults.Count > 0)
            return Reading.Refused<RenderedPage>(faults);

        var named = Named(scratch.FullPath);
        return Reading.Of(Collect(placing.Frame, scratch, named, rawPath, cancellation));
    }

    /// <summary>Device and colour: RGB goes through the profile, DeviceCMYK is taken as meant for it and stays as it is.</summary>
    public static IReadOnlyList<string> Separations(string profilePath) =>
    [
        "-sDEVICE=tiffsep", Invariant($"-dMaxSpots={Ghostscript.MaxSpots}"), "-sCompression=lzw", "-dUseBigTIFF=true",
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

    private static RenderedPage Collect(
        PixelFrame frame, ScratchFolder scratch, IReadOnlyList<(string Name, string Path)> named, string rawPath, CancellationToken cancellation)
    {
        List<(string Name, string Path)> all = [.. ImagePlates.Process.Select(p => (p, scratch.File("plate(" + p + ").tif"))), .. named];
        using var file = new PlateFile(rawPath, frame, all.Count);
        for (int plate = 0; plate < all.Count; plate++)
        {
            // Ghostscript writes 0 for full ink.
            using var whole = ImageFile.Open(all[plate].Path, ArtworkKind.Tiff, 1, fromTopOnly: true);
            using var part = whole.Crop(frame.Left, frame.Top, frame.FilledWidth, frame.FilledHeight);
            using var ink = part.Invert();
            ink.SetProgress(null, cancellation);
            int number = plate;
            using var sink = new RowSink(frame.FilledWidth, (row, pixels) => file.Write(number, row, pixels));
            ImagePlates.Pour(ink, sink, frame.FilledHeight, cancellation);
        }

        file.Keep();
        return new(frame.Width, frame.Height, [.. all.Select(p => p.Name)], rawPath);
    }
}
