using Laydown.Formats.Pdf;
using Laydown.Intake.Artwork;
using Laydown.Measures;

namespace Laydown.Intake.Layers;

/// <summary>Renders a page of a PDF in wide RGB of 16 bits by Ghostscript, in a limited child process.</summary>
/// <remarks>RGB of the page goes through its own profiles or sRGB, CMYK through its own or the print condition's.</remarks>
/// <param name="limits">Program and limits.</param>
internal sealed class PdfPicture(IntakeLimits limits)
{
    /// <summary>Name of the picture in the scratch folder.</summary>
    public const string File = "page.tif";

    /// <summary>Renders a page onto a grid.</summary>
    /// <param name="path">The file.</param>
    /// <param name="page">Page from 1.</param>
    /// <param name="boxes">Its boxes.</param>
    /// <param name="width">Pixels of the grid across.</param>
    /// <param name="height">Pixels down.</param>
    /// <param name="trim">Where its trim box lies on the grid, pixels from the upper left corner.</param>
    /// <param name="cmykProfile">Profile of CMYK without one.</param>
    /// <param name="scratch">Takes the picture.</param>
    /// <param name="cancellation">Ends the child.</param>
    /// <returns>The pixels that the page's bleed box fills, or the faults.</returns>
    public async Task<Reading<PixelFrame>> RenderAsync(
        string path, int page, PageBoxes boxes, int width, int height, RectMm trim, string cmykProfile, ScratchFolder scratch, CancellationToken cancellation)
    {
        double perMmX = trim.WidthMm / boxes.TrimMm.WidthMm, perMmY = trim.HeightMm / boxes.TrimMm.HeightMm;
        double ppiX = perMmX * 25.4, ppiY = perMmY * 25.4;

        // Pixels from the lower left corner of the grid to the lower left corner of the media.
        double shiftX = trim.XMm - (boxes.TrimMm.XMm * perMmX);
        double shiftY = height - trim.YMm - trim.HeightMm - (boxes.TrimMm.YMm * perMmY);
        string wide = scratch.File("wide.icc");
        await System.IO.File.WriteAllBytesAsync(wide, WideRgb.Profile(), cancellation);
        List<string> options =
        [
            "-sDEVICE=tiff48nc", "-sCompression=lzw", "-dUseBigTIFF=true", "-dTextAlphaBits=4", "-dGraphicsAlphaBits=4", "-dFIXEDMEDIA",
            "-sOutputICCProfile=" + wide, "-sDefaultCMYKProfile=" + Path.GetFullPath(cmykProfile), "-dRenderIntent=1", "-dBlackPtComp=0",
            "--permit-file-read=" + wide, "--permit-file-read=" + Path.GetFullPath(cmykProfile),
            Invariant($"-g{width}x{height}"), Invariant($"-r{ppiX:0.######}x{ppiY:0.######}"), "-sOutputFile=" + File,
        ];
        string? before = shiftX == 0 && shiftY == 0
            ? null
            : Invariant($"<</Install {{{shiftX * 72 / ppiX:0.######} {shiftY * 72 / ppiY:0.######} translate}}>> setpagedevice");
        IReadOnlyList<InputFault> faults = await new Ghostscript(limits).RunAsync(path, page, options, before, scratch.FullPath, cancellation);
        return faults.Count > 0 ? Reading.Refused<PixelFrame>(faults) : Reading.Of(Filled(width, height, shiftX, shiftY, boxes, perMmX, perMmY));
    }

    private static PixelFrame Filled(int width, int height, double shiftX, double shiftY, PageBoxes boxes, double perMmX, double perMmY)
    {
        // Only whole pixels within the bleed box count as filled; a thousandth of a pixel is rounding.
        const double Slack = 1e-3;
        int left = (int)Math.Clamp(Math.Ceiling(shiftX + (boxes.BleedMm.XMm * perMmX) - Slack), 0, width - 1);
        int right = (int)Math.Clamp(Math.Floor(shiftX + (boxes.BleedMm.RightMm * perMmX) + Slack), left + 1, width);
        int lower = (int)Math.Clamp(Math.Ceiling(shiftY + (boxes.BleedMm.YMm * perMmY) - Slack), 0, height - 1);
        int upper = (int)Math.Clamp(Math.Floor(shiftY + (boxes.BleedMm.TopMm * perMmY) + Slack), lower + 1, height);
        return new(width, height, left, height - upper, right, height - lower);
    }
}
