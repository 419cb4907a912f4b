using Laydown.Artwork.Pages;
using Laydown.Formats.Svg;
using Laydown.Measures;
using Laydown.Shop.Artwork;
using NetVips;

namespace Laydown.Intake.Artwork;

/// <summary>Draws an SVG band by band and brings it to the inks of a print condition; what it leaves unpainted stays bare sheet.</summary>
/// <param name="limits">What is taken at most.</param>
internal sealed class SvgPlates(IntakeLimits limits)
{
    private const int BandBytes = 32 << 20;
    private const int CodeSidePx = 4000;

    /// <summary>The part of the limits that the reader of SVG knows.</summary>
    private SvgLimits Limits => new(limits.Operations, 256, limits.Pixels, limits.SideMm);

    /// <summary>The page as measured.</summary>
    public Reading<ArtworkPage> Measure(string path, CancellationToken cancellation) => SvgPage.Load(path, Limits).Then(page =>
    {
        using (page)
        {
            var measured = SvgMeasure.Page(page);
            var (width, height) = Pixels(page.Size, CodeSidePx);
            using var picture = Whole(page, width, height, cancellation);
            return Reading.Of(measured with { Codes = CodeFinder.Find(RenderedMeasure.Grey(picture, page.Size)) });
        }
    });

    /// <summary>Plates that every drawing has: it may leave any part bare.</summary>
    public static IReadOnlyList<string> Plates { get; } = [.. ImagePlates.Process, "Alpha"];

    /// <summary>Writes the plates of the page to a raw file.</summary>
    public Reading<RenderedPage> Write(RenderRequest request, string rawPath, CancellationToken cancellation) => Load(request).Then(page =>
    {
        using (page)
        {
            var frame = PixelFrame.OfFinishedPiece(request);
            using var file = new PlateFile(rawPath, frame, Plates.Count);
            Pour(page, request.ProfilePath, frame, deep: false, top => ImagePlates.Sink(file, frame, Plates.Count, top), cancellation);
            file.Keep();
            return Reading.Of(new RenderedPage(frame.Width, frame.Height, Plates, rawPath));
        }
    });

    /// <summary>The drawing that is asked for, or why it cannot be taken.</summary>
    public Reading<SvgPage> Load(RenderRequest request) => request.Page == 1
        ? SvgPage.Load(request.ArtworkPath, Limits)
        : Reading.Refused<SvgPage>(new InputFault(Path.GetFileName(request.ArtworkPath), null, "page", Invariant($"page {request.Page} of 1"), "a page of the file"));

    /// <summary>Draws the page band by band into a sink for each.</summary>
    /// <param name="page">The drawing.</param>
    /// <param name="profilePath">CMYK output profile.</param>
    /// <param name="frame">Pixels wanted.</param>
    /// <param name="deep">Whether values have 16 bits; else 8.</param>
    /// <param name="sinkOf">Gives the sink for rows from a first one on.</param>
    /// <param name="cancellation">Looked at before each band, and while its inks are computed.</param>
    public static void Pour(SvgPage page, string profilePath, PixelFrame frame, bool deep, Func<int, RowSink> sinkOf, CancellationToken cancellation)
    {
        foreach (var (top, rows, picture) in Bands(page, frame.FilledWidth, frame.FilledHeight, cancellation))
        {
            using (picture)
            {
                using var inks = ImagePlates.Inks(picture, profilePath, new PixelFrame(frame.FilledWidth, rows, 0, 0, frame.FilledWidth, rows), deep);
                using var sink = sinkOf(top);
                ImagePlates.Pour(inks, sink, rows, cancellation);
            }
        }
    }

    /// <summary>Writes an sRGB picture of the page, no side longer than asked.</summary>
    public Reading<SizeMm> Preview(string path, int maxSidePx, string png, CancellationToken cancellation) => SvgPage.Load(path, Limits).Then(page =>
    {
        using (page)
        {
            var (width, height) = Pixels(page.Size, maxSidePx);
            using var whole = Whole(page, width, height, cancellation);
            using var target = new FileStream(png, FileMode.CreateNew, FileAccess.Write);
            whole.PngsaveStream(target, keep: Enums.ForeignKeep.None);
            return Reading.Of(page.Size);
        }
    });

    private static (int Width, int Height) Pixels(SizeMm size, int mostPx)
    {
        double perMm = Math.Min(300 / 25.4, mostPx / Math.Max(size.WidthMm, size.HeightMm));
        return (Math.Clamp((int)Math.Round(size.WidthMm * perMm), 1, mostPx), Math.Clamp((int)Math.Round(size.HeightMm * perMm), 1, mostPx));
    }

    private static Image Whole(SvgPage page, int width, int height, CancellationToken cancellation)
    {
        var bands = Bands(page, width, height, cancellation).Select(b => b.Picture);
        return bands.Aggregate((above, below) => above.Join(below, Enums.Direction.Vertical)).Copy(interpretation: Enums.Interpretation.Srgb);
    }

    private static IEnumerable<(int Top, int Rows, Image Picture)> Bands(SvgPage page, int width, int height, CancellationToken cancellation)
    {
        int most = Math.Max(1, BandBytes / 4 / width);
        for (int top = 0; top < height; top += most)
        {
            cancellation.ThrowIfCancellationRequested();
            int rows = Math.Min(most, height - top);
            using var picture = Image.NewFromMemory(page.Band(width, height, top, rows), width, rows, 4, Enums.BandFormat.Uchar);
            yield return (top, rows, picture.Copy(interpretation: Enums.Interpretation.Srgb));
        }
    }
}
