using Laydown.Artwork.Pages;
using Laydown.Measures;
using Laydown.Shop.Artwork;

namespace Laydown.Intake.Artwork;

/// <summary>What every request to render passes before anything is opened.</summary>
internal static class RequestCheck
{
    /// <summary>The format of the file, or why it cannot be rendered as wanted.</summary>
    /// <exception cref="ArgumentException">The size, bleed, resolution or page wanted makes no picture.</exception>
    public static Reading<ArtworkKind> Of(RenderRequest request, IntakeLimits limits)
    {
        Sense(request);
        var kind = FirstLook.At(request.ArtworkPath, limits);
        if (!kind.IsTaken)
            return kind;

        string file = Path.GetFileName(request.ArtworkPath);
        var (width, height) = PixelFrame.Size(request);
        if ((long)width * height > limits.RenderPixels)
            return Refused(file, request.Page, "printed size × resolution", Invariant($"{(double)width * height / 1e6:0} Mpx"), Invariant($"at most {limits.RenderPixels / 1e6:0} Mpx"));
        return File.Exists(request.ProfilePath)
            ? kind
            : Refused(file, null, "print condition profile", "no file " + Path.GetFileName(request.ProfilePath), "the ICC profile of the print condition");
    }

    private static void Sense(RenderRequest request)
    {
        Bounds.Within(request.Page, 1, int.MaxValue);
        Bounds.Within(request.Ppi, 1, 10_000);
        Bounds.Within(request.BleedMm, 0, 10_000);
        Bounds.Within(request.Printed.WidthMm - (2 * request.BleedMm), 1e-3, 1e6, "finished width");
        Bounds.Within(request.Printed.HeightMm - (2 * request.BleedMm), 1e-3, 1e6, "finished height");
        var (width, height) = PixelFrame.Size(request);
        Bounds.Within(Math.Min(width, height), 1, int.MaxValue, "pixels");
    }

    private static Reading<ArtworkKind> Refused(string file, int? page, string field, string found, string wanted) =>
        Reading.Refused<ArtworkKind>(new InputFault(file, page, field, found, wanted));
}
