using System.Security.Cryptography;
using Laydown.Artwork.Pages;
using Laydown.Formats.Images;
using Laydown.Measures;
using Laydown.Shop.Artwork;

namespace Laydown.Intake.Artwork;

/// <summary>Measures customers' files: what they hold, at which size, in which colours. Nothing of a file is trusted, and no file is changed.</summary>
/// <param name="limits">What is taken at most.</param>
public sealed class ArtworkReader(IntakeLimits limits) : IArtworkReader, IDisposable
{
    private readonly MeasuringChild child = new(limits);

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
                ArtworkKind.Svg => await ApartAsync(path, cancellation),
                _ => await ImageAsync(path, kind.Value, cancellation),
            };
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return Reading.Refused<ArtworkFile>(new InputFault(Path.GetFileName(path), null, "disk", failure.Message, "a file that can be read and room for work files"));
        }
    }

    /// <inheritdoc/>
    public void Dispose() => child.Dispose();

    /// <summary>A PDF or drawing as its structure tells it, measured in this process: PDF pages without what only rendering shows.</summary>
    internal async Task<Reading<ArtworkFile>> StructureAsync(string path, CancellationToken cancellation)
    {
        var kind = FirstLook.At(path, limits);
        if (!kind.IsTaken)
            return Reading.Refused<ArtworkFile>(kind.Faults);
        if (kind.Value == ArtworkKind.Svg)
        {
            var page = await Task.Run(() => new SvgPlates(limits).Measure(path, cancellation), cancellation);
            return page.IsTaken
                ? Reading.Of(await FileAsync(path, ArtworkKind.Svg, null, null, [page.Value], cancellation))
                : Reading.Refused<ArtworkFile>(page.Faults);
        }

        var content = await PdfReading.ReadAsync(path, limits, cancellation);
        return content.IsTaken
            ? Reading.Of(await FileAsync(path, ArtworkKind.Pdf, content.Value.Version, content.Value.OutputIntent, content.Value.Pages, cancellation))
            : Reading.Refused<ArtworkFile>(content.Faults);
    }

    private Task<Reading<ArtworkFile>> ApartAsync(string path, CancellationToken cancellation) =>
        child.IsWanted ? child.MeasureAsync(path, cancellation) : StructureAsync(path, cancellation);

    private async Task<Reading<ArtworkFile>> PdfAsync(string path, CancellationToken cancellation)
    {
        var file = await ApartAsync(path, cancellation);
        if (!file.IsTaken)
            return file;

        var measure = new RenderedMeasure(limits);
        var pages = new List<ArtworkPage>();
        foreach (var page in file.Value.Pages)
        {
            var whole = await measure.CompleteAsync(path, page, cancellation);
            if (!whole.IsTaken)
                return Reading.Refused<ArtworkFile>(whole.Faults);
            pages.Add(whole.Value);
        }

        return Reading.Of(file.Value with { Pages = pages });
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
