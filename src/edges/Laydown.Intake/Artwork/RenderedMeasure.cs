using Laydown.Artwork.Pages;
using Laydown.Formats.Images;
using Laydown.Measures;
using NetVips;

namespace Laydown.Intake.Artwork;

/// <summary>What only a rendered PDF page shows: its highest total ink and its bar codes.</summary>
/// <param name="limits">Program and limits.</param>
internal sealed class RenderedMeasure(IntakeLimits limits)
{
    // Fine enough for the smallest retail code on a hand-sized page, and bounded for the largest.
    private const double CodePpi = 600;
    private const int CodeSidePx = 4000;
    private const double InkPpi = 72;
    private const int InkSidePx = 1200;

    /// <summary>The page with both filled in, or why it cannot be rendered.</summary>
    public async Task<Reading<ArtworkPage>> CompleteAsync(string path, ArtworkPage page, CancellationToken cancellation)
    {
        using var scratch = new ScratchFolder(limits.ScratchFolder);
        var options = Size(page.MediaMm, CodePpi, CodeSidePx);
        var faults = await new Ghostscript(limits).RunAsync(path, page.Number, ["-sDEVICE=pnggray", .. options, "-sOutputFile=grey.png"], null, scratch.FullPath, cancellation);
        if (faults.Count > 0)
            return Reading.Refused<ArtworkPage>(faults);

        var codes = await Task.Run(() => CodeFinder.Find(Grey(scratch.File("grey.png"), page.MediaMm)), cancellation);
        var withCodes = page with { Codes = codes };
        return page.ColourSpaces.Any(s => s is "DeviceCMYK" or "ICCBased(4)" or "DeviceN") ? await InkAsync(path, withCodes, scratch, cancellation) : Reading.Of(withCodes);
    }

    /// <summary>A picture of the page in grey.</summary>
    public static GreyPicture Grey(string png, SizeMm media)
    {
        using var image = ImageFile.Open(png, ArtworkKind.Png, 1, fromTopOnly: true);
        return Grey(image, media);
    }

    /// <summary>An image in grey, over white where it is see-through, made smaller where it is very large.</summary>
    public static GreyPicture Grey(Image image, SizeMm media)
    {
        using var opaque = image.HasAlpha() ? image.Flatten(background: [image.Format == Enums.BandFormat.Ushort ? 65535 : 255]) : image.Copy();
        using var grey = opaque.Colourspace(Enums.Interpretation.Bw);
        int step = (int)Math.Ceiling(Math.Max(grey.Width, grey.Height) / (double)CodeSidePx);
        using var small = step > 1 ? grey.Shrink(step, step) : grey.Copy();
        using var bytes = small[0].Cast(Enums.BandFormat.Uchar);
        return new(bytes.WriteToMemory<byte>(), bytes.Width, bytes.Height, media.WidthMm / bytes.Width, media.HeightMm / bytes.Height);
    }

    private async Task<Reading<ArtworkPage>> InkAsync(string path, ArtworkPage page, ScratchFolder scratch, CancellationToken cancellation)
    {
        await File.WriteAllBytesAsync(scratch.File("white.icc"), CmykOnly.WhiteProfile(), cancellation);
        var size = Size(page.MediaMm, InkPpi, InkSidePx);
        List<string> options =
        [
            "-sDEVICE=tiffsep", Invariant($"-dMaxSpots={Ghostscript.MaxSpots}"), "-dOverrideICC=true", "-dBlackPtComp=0", .. size,
            "-sDefaultRGBProfile=" + scratch.File("white.icc"), "--permit-file-read=" + scratch.File("white.icc"), "-sOutputFile=plate.tif",
        ];
        var faults = await new Ghostscript(limits).RunAsync(path, page.Number, options, null, scratch.FullPath, cancellation);
        if (faults.Count > 0)
            return Reading.Refused<ArtworkPage>(faults);

        var (percent, place) = Peak(scratch, page.MediaMm);
        return Reading.Of(page with { TotalInkPercent = percent, TotalInkPlace = place });
    }

    private static (double Percent, RectMm Place) Peak(ScratchFolder scratch, SizeMm media)
    {
        Image[] plates = [.. ImagePlates.Process.Select(p => ImageFile.Open(scratch.File("plate(" + p + ").tif"), ArtworkKind.Tiff, 1, fromTopOnly: true))];
        using var sum = Image.Sum(plates);
        using var ink = 4 * 255 - sum;
        double most = ink.Max(out int x, out int y);
        double across = media.WidthMm / sum.Width, down = media.HeightMm / sum.Height;
        return (most / 2.55, new RectMm(x * across, media.HeightMm - ((y + 1) * down), across, down));
    }

    private static IReadOnlyList<string> Size(SizeMm media, double mostPpi, int mostPx)
    {
        double ppi = Math.Min(mostPpi, mostPx * 25.4 / Math.Max(media.WidthMm, media.HeightMm));
        int width = Math.Max(1, (int)Math.Round(media.WidthMm * ppi / 25.4)), height = Math.Max(1, (int)Math.Round(media.HeightMm * ppi / 25.4));

        // The page fills the whole pixels to the edge: each axis by itself.
        double ppiX = width * 25.4 / media.WidthMm, ppiY = height * 25.4 / media.HeightMm;
        return ["-dFIXEDMEDIA", Invariant($"-g{width}x{height}"), Invariant($"-r{ppiX:0.######}x{ppiY:0.######}")];
    }
}
