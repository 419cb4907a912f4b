using Laydown.Artwork.Pages;
using Laydown.Intake.Artwork;
using Laydown.Measures;

namespace Laydown.Intake.Layers;

/// <summary>The checks that a file of a pair passes before anything of it is opened.</summary>
internal static class PictureLook
{
    private const int MarkBytes = 12;

    /// <summary>The format, or why the file cannot be taken.</summary>
    public static Reading<PictureKind> At(string path, IntakeLimits limits)
    {
        string name = Path.GetFileName(path);
        FileInfo file = new(path);
        bool says = string.Equals(Path.GetExtension(name), ".webp", StringComparison.OrdinalIgnoreCase);
        if (file.Exists && file.Length > MarkBytes && file.Length <= limits.Bytes && IsWebP(file))
        {
            return says
                ? Reading.Of(PictureKind.WebP)
                : Reading.Refused<PictureKind>(new InputFault(
                    name, null, "file name", Invariant($"'{Path.GetExtension(name)}' on a file that is WebP inside"), "a name that says WEBP, or the right file"));
        }

        Reading<ArtworkKind> kind = FirstLook.At(path, limits);
        return kind.IsTaken
            ? Reading.Of(Of(kind.Value))
            : Reading.Refused<PictureKind>([.. kind.Faults.Select(f => f.Field == "first bytes"
                ? f with { Wanted = "a picture: PNG, JPEG, TIFF, WebP, SVG or a page of a PDF" }
                : f.Field == "file" ? f with { Wanted = "the file of a picture" } : f)]);
    }

    private static PictureKind Of(ArtworkKind kind) => kind switch
    {
        ArtworkKind.Pdf => PictureKind.Pdf,
        ArtworkKind.Svg => PictureKind.Svg,
        ArtworkKind.Png => PictureKind.Png,
        ArtworkKind.Jpeg => PictureKind.Jpeg,
        _ => PictureKind.Tiff,
    };

    private static bool IsWebP(FileInfo file)
    {
        Span<byte> start = stackalloc byte[MarkBytes];
        using FileStream stream = file.OpenRead();
        stream.ReadExactly(start);
        return start[..4].SequenceEqual("RIFF"u8) && start[8..].SequenceEqual("WEBP"u8);
    }
}
