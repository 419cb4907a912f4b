using Laydown.Artwork.Pages;
using NetVips;

namespace Laydown.Formats.Images;

/// <summary>Opens TIFF, PNG and JPEG files with the one loader that belongs to the format told from the first bytes.</summary>
public static class ImageFile
{
    static ImageFile()
    {
        // Damage is told by exceptions; the same words on the error stream would only confuse.
        Log.SetLogHandler("VIPS", Enums.LogLevelFlags.Warning, (_, _, _) => { });
        Cache.Max = 0;
    }

    /// <summary>The page of an image file, not decoded yet. Damage found while decoding throws.</summary>
    /// <param name="path">The file.</param>
    /// <param name="kind">Its format; not PDF, not SVG.</param>
    /// <param name="page">Page from 1; only TIFF has more than one.</param>
    /// <param name="fromTopOnly">Whether rows will be asked for once, from the top: no more than a few are then in memory.</param>
    /// <exception cref="VipsException">The file is damaged.</exception>
    public static Image Open(string path, ArtworkKind kind, int page, bool fromTopOnly)
    {
        var access = fromTopOnly ? Enums.Access.Sequential : Enums.Access.Random;
        return kind switch
        {
            ArtworkKind.Tiff => Image.Tiffload(path, page: page - 1, access: access, failOn: Enums.FailOn.Error),
            ArtworkKind.Png => Image.Pngload(path, access: access, failOn: Enums.FailOn.Error),
            ArtworkKind.Jpeg => Image.Jpegload(path, access: access, failOn: Enums.FailOn.Error),
            _ => throw new ArgumentException(Invariant($"Kind {kind}: wanted an image format."), nameof(kind)),
        };
    }

    /// <summary>A PNG or JPEG that lies within another file, not decoded yet.</summary>
    /// <exception cref="VipsException">It is damaged.</exception>
    public static Image OpenWithin(byte[] bytes) => bytes is [0x89, ..]
        ? Image.PngloadBuffer(bytes, failOn: Enums.FailOn.Error)
        : Image.JpegloadBuffer(bytes, failOn: Enums.FailOn.Error);

    /// <summary>How many pages the file has.</summary>
    public static int Pages(Image first) => first.Contains("n-pages") ? Math.Max(1, (int)first.Get("n-pages")) : 1;

    /// <summary>Whether the camera lay on its side, so that rows become columns.</summary>
    public static bool IsTurned(Image image) => Orientation(image) >= 5;

    /// <summary>EXIF or TIFF orientation, 1 to 8; 1 is upright.</summary>
    public static int Orientation(Image image)
    {
        int value = image.Contains("orientation") ? (int)image.Get("orientation") : 1;
        return value is >= 1 and <= 8 ? value : 1;
    }

    /// <summary>The embedded ICC profile, or null.</summary>
    public static byte[]? Profile(Image image) => image.Contains("icc-profile-data") ? (byte[])image.Get("icc-profile-data") : null;

    /// <summary>Colour channels of the image, alpha not counted.</summary>
    public static int Colours(Image image) => image.Interpretation == Enums.Interpretation.Cmyk ? 4 : image.Bands >= 3 ? 3 : 1;
}
