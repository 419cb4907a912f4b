using System.Security.Cryptography;
using Laydown.Artwork.Pages;
using Laydown.Formats.Images;
using Laydown.Measures;
using Laydown.Shop.Artwork;

namespace Laydown.Intake.Artwork;

/// <summary>Measures customers' files: what they hold, at which size, in which colours. Nothing of a file is trusted, and no file is changed.</summary>
/// <param name="limits">What is taken at most.</param>
public sealed class ArtworkReader(IntakeLimits limits) : IArtworkReader
{
    /// <inheritdoc/>
    public async Task<Reading<ArtworkFile>> ReadAsync(string path, CancellationToken cancellation)
    {
        var kind = FirstLook.At(path, limits);
        if (!kind.IsTaken)
            return Reading.Refused<ArtworkFile>(kind.Faults);

        try
        {
            return kind.Value switch
            {
                ArtworkKind.Pdf => await PdfAsync(path, cancellation),
                ArtworkKind.Svg => Reading.Refused<ArtworkFile>(new InputFault(Path.GetFileName(path), null, "format", "SVG", "PDF, TIFF, PNG or JPEG")),
                _ => await ImageAsync(path, kind.Value, cancellation),
            };
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return Reading.Refused<ArtworkFile>(new InputFault(Path.GetFileName(path), null, "disk", failure.Message, "a file that can be read and room for work files"));
        }
    }

    private async Task<Reading<ArtworkFile>> PdfAsync(string path, CancellationToken cancellation)
    {
        var content = await PdfReading.ReadAsync(path, limits, cancellation);
        return content.IsTaken
            ? Reading.Of(await FileAsync(path, ArtworkKind.Pdf, content.Value.Version, content.Value.OutputIntent, content.Value.Pages, cancellation))
            : Reading.Refused<ArtworkFile>(content.Faults);
    }

    private async Task<Reading<ArtworkFile>> ImageAsync(string path, ArtworkKind kind, CancellationToken cancellation)
    {
        var pages = await Task.Run(() => ImageMeasure.Read(path, kind, limits.Pages, limits.Pixels, cancellation), cancellation);
        return pages.IsTaken
            ? Reading.Of(await FileAsync(path, kind, null, null, pages.Value, cancellation))
            : Reading.Refused<ArtworkFile>(pages.Faults);
    }

    private static async Task<ArtworkFile> FileAsync(
        string path, ArtworkKind kind, string? version, string? intent, IReadOnlyList<ArtworkPage> pages, CancellationToken cancellation)
    {
        await using var stream = File.OpenRead(path);
        byte[] hash = await SHA256.HashDataAsync(stream, cancellation);
        return new(Path.GetFileName(path), kind, stream.Length, Convert.ToHexStringLower(hash), version, intent, pages);
    }
}
