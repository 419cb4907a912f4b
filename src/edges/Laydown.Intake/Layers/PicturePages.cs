using Laydown.Artwork.Pages;
using Laydown.Formats.Images;
using Laydown.Intake.Artwork;
using Laydown.Measures;
using NetVips;

namespace Laydown.Intake.Layers;

/// <summary>Opens one image of a file, and refuses to guess where a file holds several.</summary>
/// <param name="limits">What is taken at most.</param>
internal sealed class PicturePages(IntakeLimits limits)
{
    /// <summary>The image, upright, not decoded yet; or why it cannot be taken.</summary>
    /// <param name="path">The file.</param>
    /// <param name="kind">Its format; not PDF, not SVG.</param>
    /// <param name="frame">Which of several, from 1; null where there may be one only.</param>
    /// <param name="fromTopOnly">Whether rows are asked for once, from the top.</param>
    public Reading<Image> Open(string path, PictureKind kind, int? frame, bool fromTopOnly)
    {
        string file = Path.GetFileName(path);
        (int count, bool firstOnly) = Count(path, kind);
        if (frame is null && count > 1)
            return Refused(file, null, "frames", Invariant($"{count}"), "one picture; name one with --frame: 1 would be the first shown");
        if (frame is { } asked && (asked < 1 || asked > count || (firstOnly && asked > 1)))
            return Refused(file, asked, "frame", Invariant($"{asked} of {count}"), firstOnly ? "1: of an animated PNG only the first can be taken" : Invariant($"1 to {count}"));

        Image image = Load(path, kind, frame ?? 1, fromTopOnly);
        long pixels = (long)image.Width * image.Height;
        if (pixels > limits.Pixels)
            return Refused(file, frame, "pixels", Invariant($"{image.Width} × {image.Height} = {pixels / 1e6:0.#} Mpx"), Invariant($"at most {limits.Pixels / 1e6:0.#} Mpx"));
        return LabPicture.Fault(image, file, frame) is { } fault ? Reading.Refused<Image>(fault) : Reading.Of(image);
    }

    private static Image Load(string path, PictureKind kind, int frame, bool fromTopOnly)
    {
        using Image first = OpenAs(path, kind, frame, fromTopOnly: true);
        if (ImageFile.Orientation(first) == 1)
            return fromTopOnly ? first.Copy() : OpenAs(path, kind, frame, fromTopOnly: false);

        // Rows are asked for in another order than they lie in the file.
        using Image lying = OpenAs(path, kind, frame, fromTopOnly: false);
        return lying.Autorot();
    }

    private static Image OpenAs(string path, PictureKind kind, int frame, bool fromTopOnly) => kind switch
    {
        PictureKind.WebP => Image.Webpload(
            path, page: frame - 1, n: 1, access: fromTopOnly ? Enums.Access.Sequential : Enums.Access.Random, failOn: Enums.FailOn.Error),
        PictureKind.Png => ImageFile.Open(path, ArtworkKind.Png, 1, fromTopOnly),
        PictureKind.Jpeg => ImageFile.Open(path, ArtworkKind.Jpeg, 1, fromTopOnly),
        _ => ImageFile.Open(path, ArtworkKind.Tiff, frame, fromTopOnly),
    };

    private static (int Count, bool FirstOnly) Count(string path, PictureKind kind)
    {
        if (kind == PictureKind.Png)
            return AnimatedPng.Frames(path) is { } frames and > 1 ? (frames, true) : (1, true);
        using Image first = OpenAs(path, kind, 1, fromTopOnly: true);
        return (ImageFile.Pages(first), false);
    }

    private static Reading<Image> Refused(string file, int? page, string field, string found, string wanted) =>
        Reading.Refused<Image>(new InputFault(file, page, field, found, wanted));
}
