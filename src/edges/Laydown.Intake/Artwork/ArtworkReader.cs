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
                ArtworkKind.Svg => await SvgAsync(path, cancellation),
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
        if (!content.IsTaken)
            return Reading.Refused<ArtworkFile>(content.Faults);

        var measure = new RenderedMeasure(limits);
        var pages = new List<ArtworkPage>();
        foreach (var page in content.Value.Pages)
        {
            var whole = await measure.CompleteAsync(path, page, cancellation);
            if (!whole.IsTaken)
                return Reading.Refused<ArtworkFile>(whole.Faults);
            pages.Add(whole.Value);
        }

        return Reading.Of(await FileAsync(path, ArtworkKind.Pdf, content.Value.Version, content.Value.OutputIntent, pages, cancellation));
    }

    private async Task<Reading<ArtworkFile>> SvgAsync(string path, CancellationToken cancellation)
    {
        var page = await Task.Run(() => new SvgPlates(limits).Measure(path, cancellation), cancellation);
        return page.IsTaken
            ? Reading.Of(await FileAsync(path, ArtworkKind.Svg, null, null, [page.Value], cancellation))
            : Reading.Refused<ArtworkFile>(page.Faults);
    }

    private async Task<Reading<ArtworkFile>> ImageAsync(string path, ArtworkKind kind, CancellationToken cancellation)
    {
        var pages = await Task.Run(() => ImageMeasure.Read(path, kind, limits.Pages, limits.Pixels, cancellation), cancellation);
        if (!pages.IsTaken)
            return Reading.Refused<ArtworkFile>(pages.Faults);

        var withCodes = await Task.Run(() => pages.Value.Select(p => WithCodes(path, kind, p, cancellation)).ToList(), cancellation);
        return Reading.Of(await FileAsync(path, kind, null, null, withCodes, cancellation));
    }

    private static ArtworkPage WithCodes(string path, ArtworkKind kind, ArtworkPage page, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        using var image = PageRenderer.Upright(path, kind, page.Number);
        return page with { Codes = CodeFinder.Find(RenderedMeasure.Grey(image, page.MediaMm)) };
    }

    private static async Task<ArtworkFile> FileAsync(
        string path, ArtworkKind kind, string? version, string? intent, IReadOnlyList<ArtworkPage> pages, CancellationToken cancellation)
    {
        await using var stream = File.OpenRead(path);
        byte[] hash = await SHA256.HashDataAsync(stream, cancellation);
        return new(Path.GetFileName(path), kind, stream.Length, Convert.ToHexStringLower(hash), version, intent, pages);
    }
}
