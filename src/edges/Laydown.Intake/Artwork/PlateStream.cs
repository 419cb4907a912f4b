using Laydown.Artwork.Pages;
using Laydown.Formats.Images;
using Laydown.Measures;
using Laydown.Shop.Artwork;

namespace Laydown.Intake.Artwork;

/// <summary>Opens plates while they are being made: PDF pages by Ghostscript, images and drawings by the image library, each in the background.</summary>
/// <remarks>
/// Rows lie in scratch files that are read by position; resident memory does not grow with the page. Images and drawings come in 16 bits through the whole
/// way of colour and size, PDF pages in the 8 bits that Ghostscript renders.
/// </remarks>
/// <param name="limits">What is taken at most, and where work files lie.</param>
public sealed class PlateStream(IntakeLimits limits) : IPlateStream
{
    /// <inheritdoc/>
    /// <exception cref="ArgumentException">The size, bleed, resolution or page wanted makes no picture.</exception>
    public async Task<Reading<OpenPlates>> OpenAsync(RenderRequest request, CancellationToken cancellation)
    {
        var kind = RequestCheck.Of(request, limits);
        if (!kind.IsTaken)
            return Reading.Refused<OpenPlates>(kind.Faults);
        cancellation.ThrowIfCancellationRequested();
        return await WorkFaults.GuardedAsync(Path.GetFileName(request.ArtworkPath), request.Page, () => kind.Value switch
        {
            ArtworkKind.Pdf => new PdfPlates(limits).OpenAsync(request, cancellation),
            ArtworkKind.Svg => Task.Run(() => Drawing(request, cancellation), cancellation),
            _ => Task.Run(() => Picture(request, kind.Value, cancellation), cancellation),
        });
    }

    private Reading<OpenPlates> Picture(RenderRequest request, ArtworkKind kind, CancellationToken cancellation)
    {
        var image = PageRenderer.Upright(request.ArtworkPath, kind, request.Page);
        if (ImageFault.Of(image, request.ArtworkPath, kind, request.Page, limits.Pixels) is { } fault)
        {
            image.Dispose();
            return Reading.Refused<OpenPlates>(fault);
        }

        var frame = PixelFrame.OfImage(request, image.Width, image.Height);
        IReadOnlyList<string> names = image.HasAlpha() ? [.. ImagePlates.Process, "Alpha"] : ImagePlates.Process;
        return Reading.Of(Open(request, frame, names, (sinkOf, stop) =>
        {
            using (image)
            {
                using var inks = ImagePlates.Inks(image, request.ProfilePath, frame, deep: true);
                inks.SetProgress(null, stop);
                using var sink = sinkOf(0);
                ImagePlates.Pour(inks, sink, frame.FilledHeight, stop);
            }
        }, cancellation));
    }

    private Reading<OpenPlates> Drawing(RenderRequest request, CancellationToken cancellation) => new SvgPlates(limits).Load(request).Then(page =>
    {
        var frame = PixelFrame.OfFinishedPiece(request);
        return Reading.Of(Open(request, frame, SvgPlates.Plates, (sinkOf, stop) =>
        {
            using (page)
                SvgPlates.Pour(page, request.ProfilePath, frame, deep: true, sinkOf, stop);
        }, cancellation));
    });

    private OpenPlates Open(RenderRequest request, PixelFrame frame, IReadOnlyList<string> names, Action<Func<int, RowSink>, CancellationToken> draw, CancellationToken cancellation)
    {
        var scratch = new ScratchFolder(limits.ScratchFolder);
        var arrived = new ArrivedRows();
        var file = new DeepPlates(scratch.File("plates.raw"), names.Count, frame.FilledHeight, frame.FilledWidth, arrived);
        var job = new PlateJob(Path.GetFileName(request.ArtworkPath), request.Page, frame.FilledHeight, arrived, new FileAndFolder(file, scratch), (_, stop) =>
        {
            draw(top => ImagePlates.Sink(file, top, arrived.Grow), stop);
            return Task.FromResult<IReadOnlyList<InputFault>>([]);
        }, cancellation);
        return new OpenPlates(names, new FramedPlates(file, frame), job.Ended, job.DisposeAsync);
    }

    private sealed record FileAndFolder(DeepPlates File, ScratchFolder Folder) : IDisposable
    {
        public void Dispose()
        {
            File.Dispose();
            Folder.Dispose();
        }
    }
}
