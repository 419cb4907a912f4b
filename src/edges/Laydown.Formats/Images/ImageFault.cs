using Laydown.Artwork.Pages;
using Laydown.Measures;
using NetVips;

namespace Laydown.Formats.Images;

/// <summary>What keeps an image out before any pixel of it is decoded: too many pixels, values or channels whose meaning the file does not say, parts that are not there.</summary>
public static class ImageFault
{
    /// <summary>The first fault of a page, or null.</summary>
    /// <param name="image">The page, not decoded yet.</param>
    /// <param name="path">The file it was opened from.</param>
    /// <param name="kind">Its format.</param>
    /// <param name="page">Page from 1.</param>
    /// <param name="maxPixels">Most pixels taken.</param>
    public static InputFault? Of(Image image, string path, ArtworkKind kind, int page, long maxPixels)
    {
        string file = Path.GetFileName(path);
        long pixels = (long)image.Width * image.Height;
        if (pixels > maxPixels)
            return new(file, page, "pixels", Invariant($"{image.Width} × {image.Height} = {pixels / 1e6:0.#} Mpx"), Invariant($"at most {maxPixels / 1e6:0.#} Mpx"));

        // Floating point has no white that all programs agree on, and may hold values that are no numbers; signed and long integers likewise.
        bool lab = image.Interpretation is Enums.Interpretation.Lab or Enums.Interpretation.Labs;
        if (!lab && image.Format is not (Enums.BandFormat.Uchar or Enums.BandFormat.Ushort))
            return new(file, page, "SampleFormat", Invariant($"values of kind {image.Format.ToString().ToLowerInvariant()}"), "whole numbers without sign, of 16 bits at most");

        int channels = image.Bands - (image.HasAlpha() ? 1 : 0);
        bool known = channels == 4 ? image.Interpretation == Enums.Interpretation.Cmyk : channels is 1 or 3;
        if (!known)
            return new(file, page, "SamplesPerPixel", Invariant($"{channels} channels of kind {image.Interpretation.ToString().ToLowerInvariant()}"), "grey, RGB, Lab or CMYK, with or without alpha");

        return kind == ArtworkKind.Tiff && TiffPieces.Damage(path, page) is { } damage
            ? new(file, page, "strips, tiles", damage, "every strip and tile in the file, each in its own place")
            : null;
    }
}
