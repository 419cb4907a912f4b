using Laydown.Formats.Pdf;
using Laydown.Shop.Artwork;

namespace Laydown.Intake.Artwork;

/// <summary>How a PDF page is put on the pixels: the trim box becomes the finished piece, each axis scaled by itself.</summary>
/// <param name="Options">Ghostscript's options for size and resolution; size first.</param>
/// <param name="Translate">PostScript that shifts the page; empty where nothing is to be shifted.</param>
/// <param name="Frame">Pixels, and those that the page's bleed box fills.</param>
internal sealed record Placing(IReadOnlyList<string> Options, string Translate, PixelFrame Frame)
{
    /// <summary>PostScript that is run before the page, or null.</summary>
    private string? Before => Translate.Length == 0 ? null : Invariant($"<</Install {{{Translate}}}>> setpagedevice");

    /// <summary>The placing of a page.</summary>
    public static Placing Of(RenderRequest request, PageBoxes boxes)
    {
        var (width, height) = PixelFrame.Size(request);
        double perMm = request.Ppi / 25.4;
        double scaleX = (request.Printed.WidthMm - (2 * request.BleedMm)) / boxes.TrimMm.WidthMm;
        double scaleY = (request.Printed.HeightMm - (2 * request.BleedMm)) / boxes.TrimMm.HeightMm;

        // Pixels from the lower left corner of the printed piece to the lower left corner of the media.
        double shiftX = (request.BleedMm - (boxes.TrimMm.XMm * scaleX)) * perMm;
        double shiftY = (request.BleedMm - (boxes.TrimMm.YMm * scaleY)) * perMm;
        double ppiX = request.Ppi * scaleX, ppiY = request.Ppi * scaleY;
        string translate = shiftX == 0 && shiftY == 0 ? "" : Invariant($"{shiftX * 72 / ppiX:0.######} {shiftY * 72 / ppiY:0.######} translate");
        return new(
            [Invariant($"-g{width}x{height}"), Invariant($"-r{ppiX:0.######}x{ppiY:0.######}"), "-dFIXEDMEDIA"],
            translate,
            Filled(width, height, shiftX, shiftY, boxes, scaleX * perMm, scaleY * perMm));
    }

    /// <summary>Options and PostScript for some rows of the page alone.</summary>
    /// <param name="first">First row from the top.</param>
    /// <param name="rows">How many.</param>
    public (IReadOnlyList<string> Options, string? Before) Rows(int first, int rows)
    {
        if (rows == Frame.Height)
            return (Options, Before);

        // The page is moved by whole pixels, after it was put in its place.
        int down = Frame.Height - rows - first;
        string shift = Invariant($"matrix currentmatrix dup 5 2 copy get {down} add put setmatrix");
        return ([Invariant($"-g{Frame.Width}x{rows}"), .. Options.Skip(1)], Invariant($"<</Install {{{Translate} {shift}}}>> setpagedevice"));
    }

    private static PixelFrame Filled(int width, int height, double shiftX, double shiftY, PageBoxes boxes, double pixelsPerMmX, double pixelsPerMmY)
    {
        // Only whole pixels within the bleed box count as filled; a thousandth of a pixel is rounding.
        const double Slack = 1e-3;
        int left = (int)Math.Clamp(Math.Ceiling(shiftX + (boxes.BleedMm.XMm * pixelsPerMmX) - Slack), 0, width - 1);
        int right = (int)Math.Clamp(Math.Floor(shiftX + (boxes.BleedMm.RightMm * pixelsPerMmX) + Slack), left + 1, width);
        int lower = (int)Math.Clamp(Math.Ceiling(shiftY + (boxes.BleedMm.YMm * pixelsPerMmY) - Slack), 0, height - 1);
        int upper = (int)Math.Clamp(Math.Floor(shiftY + (boxes.BleedMm.TopMm * pixelsPerMmY) + Slack), lower + 1, height);
        return new(width, height, left, height - upper, right, height - lower);
    }
}
