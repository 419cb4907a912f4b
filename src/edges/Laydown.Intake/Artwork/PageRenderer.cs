using Laydown.Artwork.Pages;
using Laydown.Formats.Images;
using Laydown.Formats.Pdf;
using Laydown.Measures;
using Laydown.Shop.Artwork;
using NetVips;

namespace Laydown.Intake.Artwork;

/// <summary>Turns pages and images into plates of a print condition and into previews. Rows are streamed: no page is held whole.</summary>
/// <remarks>
/// The trim box becomes the finished piece, each axis scaled by itself. Bleed that the file lacks is mirrored from the edges. Inks of an image with alpha
/// are already multiplied by it, so that bare sheet shows through.
/// </remarks>
/// <param name="limits">What is taken at most, and where work files lie.</param>
public sealed class PageRenderer(IntakeLimits limits) : IPageRenderer
{
    /// <inheritdoc/>
    /// <exception cref="ArgumentException">The size, bleed, resolution or page wanted makes no picture.</exception>
    public async Task<Reading<RenderedPage>> RenderAsync(RenderRequest request, CancellationToken cancellation)
    {
        var kind = RequestCheck.Of(request, limits);
        if (!kind.IsTaken)
            return Reading.Refused<RenderedPage>(kind.Faults);

        string file = Path.GetFileName(request.ArtworkPath);
        Directory.CreateDirectory(limits.ScratchFolder);
        string raw = Path.Combine(Path.GetFullPath(limits.ScratchFolder), "plates-" + Guid.NewGuid().ToString("N") + ".raw");
        return await WorkFaults.GuardedAsync(file, request.Page, () => kind.Value switch
        {
            ArtworkKind.Pdf => PdfPageAsync(request, raw, cancellation),
            ArtworkKind.Svg => Task.Run(() => new SvgPlates(limits).Write(request, raw, cancellation), cancellation),
            _ => Task.Run(() => ImagePage(request, kind.Value, raw, cancellation), cancellation),
        });
    }

    /// <inheritdoc/>
    public async Task<Reading<SizeMm>> PreviewAsync(string artworkPath, int page, int maxSidePx, string pngPath, CancellationToken cancellation)
    {
        Bounds.Within(maxSidePx, 16, 20_000);
        Bounds.Within(page, 1, int.MaxValue);
        var kind = FirstLook.At(artworkPath, limits);
        if (!kind.IsTaken)
            return Reading.Refused<SizeMm>(kind.Faults);

        string file = Path.GetFileName(artworkPath);
        string beside = Path.GetFullPath(pngPath) + "." + Guid.NewGuid().ToString("N")[..8] + ".part";
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(beside)!);
            var size = await WorkFaults.GuardedAsync(file, page, () => kind.Value switch
            {
                ArtworkKind.Pdf => PdfPreviewAsync(artworkPath, page, maxSidePx, beside, cancellation),
                ArtworkKind.Svg => Task.Run(() => new SvgPlates(limits).Preview(artworkPath, maxSidePx, beside, cancellation), cancellation),
                _ => Task.Run(() => ImagePreview(artworkPath, kind.Value, page, maxSidePx, beside, cancellation), cancellation),
            });
            if (size.IsTaken)
                File.Move(beside, pngPath, overwrite: true);
            return size;
        }
        finally
        {
            File.Delete(beside);
        }
    }

    private async Task<Reading<RenderedPage>> PdfPageAsync(RenderRequest request, string raw, CancellationToken cancellation)
    {
        var opened = await new PdfPlates(limits).OpenAsync(request, cancellation);
        if (!opened.IsTaken)
            return Reading.Refused<RenderedPage>(opened.Faults);
        await using var plates = opened.Value;
        return await PlateFile.CopyAsync(plates, raw, cancellation);
    }

    private Reading<RenderedPage> ImagePage(RenderRequest request, ArtworkKind kind, string raw, CancellationToken cancellation)
    {
        using var image = Upright(request.ArtworkPath, kind, request.Page);
        if (ImageFault.Of(image, request.ArtworkPath, kind, request.Page, limits.Pixels) is { } fault)
            return Reading.Refused<RenderedPage>(fault);
        var frame = PixelFrame.OfImage(request, image.Width, image.Height);
        var plates = ImagePlates.Write(image, request.ProfilePath, frame, raw, cancellation);
        return Reading.Of(new RenderedPage(frame.Width, frame.Height, plates, raw));
    }

    /// <summary>The image as it is looked at, whichever way the camera lay.</summary>
    internal static Image Upright(string path, ArtworkKind kind, int page)
    {
        using var first = ImageFile.Open(path, kind, page, fromTopOnly: true);
        if (ImageFile.Orientation(first) == 1)
            return ImageFile.Open(path, kind, page, fromTopOnly: true);

        // Rows are asked for in another order than they lie in the file.
        using var lying = ImageFile.Open(path, kind, page, fromTopOnly: false);
        return lying.Autorot();
    }

    private Reading<SizeMm> ImagePreview(string path, ArtworkKind kind, int page, int maxSidePx, string png, CancellationToken cancellation)
    {
        using var image = Upright(path, kind, page);
        if (ImageFault.Of(image, path, kind, page, limits.Pixels) is { } fault)
            return Reading.Refused<SizeMm>(fault);

        using var small = image.ThumbnailImage(
            maxSidePx, height: maxSidePx, size: Enums.Size.Down, noRotate: true, inputProfile: image.Interpretation == Enums.Interpretation.Cmyk ? "cmyk" : "srgb", outputProfile: "srgb");
        small.SetProgress(null, cancellation);
        using (var target = new FileStream(png, FileMode.CreateNew, FileAccess.Write))
            small.PngsaveStream(target, keep: Enums.ForeignKeep.None);
        return Reading.Of(ImageMeasure.SizeMm(image, kind));
    }

    private async Task<Reading<SizeMm>> PdfPreviewAsync(string path, int page, int maxSidePx, string png, CancellationToken cancellation)
    {
        var boxes = PdfReader.Boxes(path, page, PdfReading.Limits(limits));
        if (!boxes.IsTaken)
            return Reading.Refused<SizeMm>(boxes.Faults);

        // The longer side fills the pixels wanted, up to 300 ppi.
        var media = boxes.Value.MediaMm;
        double ppi = Math.Min(300, maxSidePx * 25.4 / Math.Max(media.WidthMm, media.HeightMm));
        int width = Math.Max(1, (int)Math.Floor(media.WidthMm * ppi / 25.4 + 1e-6)), height = Math.Max(1, (int)Math.Floor(media.HeightMm * ppi / 25.4 + 1e-6));
        using var scratch = new ScratchFolder(limits.ScratchFolder);
        List<string> options =
        [
            "-sDEVICE=png16m", "-dTextAlphaBits=4", "-dGraphicsAlphaBits=4", "-dFIXEDMEDIA", Invariant($"-g{width}x{height}"), Invariant($"-r{ppi:0.######}"), "-sOutputFile=page.png",
        ];
        var faults = await new Ghostscript(limits).RunAsync(path, page, options, null, scratch.FullPath, cancellation);
        if (faults.Count > 0)
            return Reading.Refused<SizeMm>(faults);
        File.Copy(scratch.File("page.png"), png);
        return Reading.Of(media);
    }
}
