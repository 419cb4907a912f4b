using Laydown.Artwork.Pages;
using Laydown.Measures;
using NetVips;

namespace Laydown.Formats.Images;

/// <summary>Measures TIFF, PNG and JPEG files: size, resolution, colour, profile, alpha, total ink. Every pixel is decoded, so damage shows.</summary>
public static class ImageMeasure
{
    /// <summary>Resolution taken where the file says none, ppi: common practice, no source.</summary>
    public const double PpiWhereNone = 72;

    /// <summary>The pages of the file, or why it cannot be taken.</summary>
    /// <param name="path">The file.</param>
    /// <param name="kind">Its format; not PDF, not SVG.</param>
    /// <param name="maxPages">Most pages taken.</param>
    /// <param name="maxPixels">Most pixels of a page, checked before any is decoded.</param>
    /// <param name="cancellation">Stops the decoding.</param>
    public static Reading<IReadOnlyList<ArtworkPage>> Read(
        string path, ArtworkKind kind, int maxPages, long maxPixels, CancellationToken cancellation)
    {
        string name = Path.GetFileName(path);
        var pages = new List<ArtworkPage>();
        try
        {
            int count = Count(path, kind);
            if (count > maxPages)
                return Refused(name, null, "pages", Invariant($"{count} images"), Invariant($"at most {maxPages} in one file"));

            for (int page = 1; page <= count; page++)
            {
                cancellation.ThrowIfCancellationRequested();
                using var image = ImageFile.Open(path, kind, page, fromTopOnly: true);
                if (ImageFault.Of(image, path, kind, page, maxPixels) is { } fault)
                    return Reading.Refused<IReadOnlyList<ArtworkPage>>(fault);
                pages.Add(Page(image, kind, page, cancellation));
            }
        }
        catch (VipsException damage)
        {
            cancellation.ThrowIfCancellationRequested();
            return Refused(name, pages.Count + 1, Invariant($"{kind} data"), "damaged or cut short (" + FirstLine(damage.Message) + ")", "a whole file");
        }

        return Reading.Of<IReadOnlyList<ArtworkPage>>(pages);
    }

    private static Reading<IReadOnlyList<ArtworkPage>> Refused(string file, int? page, string field, string found, string wanted) =>
        Reading.Refused<IReadOnlyList<ArtworkPage>>(new InputFault(file, page, field, found, wanted));

    private static int Count(string path, ArtworkKind kind)
    {
        using var first = ImageFile.Open(path, kind, 1, fromTopOnly: true);
        return ImageFile.Pages(first);
    }

    /// <summary>Size of an upright image as the file says it: pixels over its resolution, or over 72 ppi where it says none.</summary>
    public static SizeMm SizeMm(Image upright, ArtworkKind kind)
    {
        var (across, down) = Declared(upright, kind) ?? (PpiWhereNone, PpiWhereNone);
        return new(upright.Width * 25.4 / across, upright.Height * 25.4 / down);
    }

    private static ArtworkPage Page(Image image, ArtworkKind kind, int page, CancellationToken cancellation)
    {
        // A file lying on its side is measured upright, as it will be printed.
        bool turned = ImageFile.IsTurned(image);
        var (width, height) = turned ? (image.Height, image.Width) : (image.Width, image.Height);
        var declared = Declared(image, kind);
        double across = declared is null ? PpiWhereNone : turned ? declared.Value.Down : declared.Value.Across;
        double down = declared is null ? PpiWhereNone : turned ? declared.Value.Across : declared.Value.Down;
        var media = new SizeMm(width * 25.4 / across, height * 25.4 / down);
        var whole = new RectMm(0, 0, media.WidthMm, media.HeightMm);

        byte[]? profile = ImageFile.Profile(image);
        string space = Space(image, profile is not null);
        var (total, place) = TotalInk(image, media, cancellation);
        var placed = new PlacedImage(width, height, whole, Math.Min(across, down), space, Bits(image), declared is null ? null : Math.Min(across, down));
        return new(
            page, 1, media, whole, whole, HasTrimBox: false, width, height, [space], profile is null ? null : ProfileName.Of(profile) ?? "profile without a name",
            image.HasAlpha(), Transparency: false, Overprint: false, [], [placed], [], [], [], [], [], total, place, []);
    }

    private static (double Across, double Down)? Declared(Image image, ArtworkKind kind)
    {
        // The loader says 1 pixel a millimetre for PNG without a resolution; TIFF and JPEG then have no unit.
        bool says = kind == ArtworkKind.Png ? image.Xres != 1 || image.Yres != 1 : image.Contains("resolution-unit");
        double across = Math.Round(image.Xres * 25.4, 2);
        double down = Math.Round(image.Yres * 25.4, 2);

        // Below 1 and above 30 000 ppi no real picture lies: such figures are slips of the writing program.
        return says && across is >= 1 and <= 30_000 && down is >= 1 and <= 30_000 ? (across, down) : null;
    }

    private static string Space(Image image, bool hasProfile) =>
        image.Interpretation is Enums.Interpretation.Lab or Enums.Interpretation.Labs ? "Lab"
        : hasProfile ? Invariant($"ICCBased({ImageFile.Colours(image)})")
        : ImageFile.Colours(image) switch { 4 => "DeviceCMYK", 3 => "DeviceRGB", _ => "DeviceGray" };

    private static int Bits(Image image) => image.Format switch
    {
        Enums.BandFormat.Ushort or Enums.BandFormat.Short => 16,
        Enums.BandFormat.Uchar or Enums.BandFormat.Char => image.Contains("bits-per-sample") ? (int)image.Get("bits-per-sample") : 8,
        _ => 32,
    };

    /// <summary>Decodes every pixel; for CMYK the highest sum of the four inks and its pixel come out of the same pass.</summary>
    private static (double? Percent, RectMm? Place) TotalInk(Image image, SizeMm media, CancellationToken cancellation)
    {
        using var watched = image.Copy();
        watched.SetProgress(null, cancellation);
        if (image.Interpretation != Enums.Interpretation.Cmyk || image.Format != Enums.BandFormat.Uchar || ImageFile.Orientation(image) != 1)
        {
            _ = watched.Avg();
            return (null, null);
        }

        using var sum = Image.Sum(watched[0], watched[1], watched[2], watched[3]);
        double most = sum.Max(out int x, out int y);
        double stepX = media.WidthMm / image.Width;
        double stepY = media.HeightMm / image.Height;
        return (most / 2.55, new RectMm(x * stepX, media.HeightMm - ((y + 1) * stepY), stepX, stepY));
    }

    private static string FirstLine(string message)
    {
        string[] lines = message.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return lines.Length > 1 ? lines[1] : lines.Length == 1 ? lines[0] : "no word why";
    }
}
