using Laydown.Shop.Artwork;

namespace Laydown.Intake.Artwork;

/// <summary>The pixels of a printed page and the part of them that the file fills; the rest is mirrored from that part's edges.</summary>
/// <param name="Width">Pixels across, bleed included.</param>
/// <param name="Height">Pixels down, bleed included.</param>
/// <param name="Left">First filled column.</param>
/// <param name="Top">First filled row.</param>
/// <param name="Right">Column after the last filled one.</param>
/// <param name="Bottom">Row after the last filled one.</param>
internal sealed record PixelFrame(int Width, int Height, int Left, int Top, int Right, int Bottom)
{
    /// <summary>Filled columns.</summary>
    public int FilledWidth => Right - Left;

    /// <summary>Filled rows.</summary>
    public int FilledHeight => Bottom - Top;

    /// <summary>Pixels of a printed size: round(mm × ppi / 25.4), as the request says.</summary>
    public static (int Width, int Height) Size(RenderRequest request) =>
        (Pixels(request.Printed.WidthMm, request.Ppi), Pixels(request.Printed.HeightMm, request.Ppi));

    /// <summary>The frame of a picture that fills the finished piece and nothing of the bleed.</summary>
    public static PixelFrame OfFinishedPiece(RenderRequest request)
    {
        var (width, height) = Size(request);
        int bleed = Pixels(request.BleedMm, request.Ppi);
        int across = Math.Min(bleed, (width - 1) / 2);
        int down = Math.Min(bleed, (height - 1) / 2);
        return new(width, height, across, down, width - across, height - down);
    }

    /// <summary>The frame of an image: that of the finished piece, or with the image's own pixels on each axis on which it is coarser, where the request wants them.</summary>
    /// <param name="request">What is wanted.</param>
    /// <param name="width">Pixels of the upright image across.</param>
    /// <param name="height">Pixels of the upright image down.</param>
    public static PixelFrame OfImage(RenderRequest request, int width, int height)
    {
        var wanted = OfFinishedPiece(request);
        if (!request.OwnResolution)
            return wanted;
        int across = Math.Min(width, wanted.FilledWidth), down = Math.Min(height, wanted.FilledHeight);
        int marginX = Margin(request.BleedMm, request.Printed.WidthMm, across), marginY = Margin(request.BleedMm, request.Printed.HeightMm, down);
        return across == wanted.FilledWidth && down == wanted.FilledHeight
            ? wanted
            : new(across + (2 * marginX), down + (2 * marginY), marginX, marginY, marginX + across, marginY + down);
    }

    private static int Margin(double bleedMm, double printedMm, int filled) =>
        (int)Math.Round(bleedMm * filled / (printedMm - (2 * bleedMm)), MidpointRounding.AwayFromZero);

    /// <summary>The place within the filled part that a place in one direction shows, counted from the filled part's start.</summary>
    /// <remarks>Mirrored at the edges, the edge pixel itself repeated; to and fro where the margin is wider than the filled part.</remarks>
    public static int Mirrored(int at, int start, int end)
    {
        int length = end - start;
        int from = (((at - start) % (2 * length)) + (2 * length)) % (2 * length);
        return from < length ? from : (2 * length) - 1 - from;
    }

    private static int Pixels(double mm, double ppi) => (int)Math.Min(Math.Round(mm * ppi / 25.4, MidpointRounding.AwayFromZero), int.MaxValue);
}
