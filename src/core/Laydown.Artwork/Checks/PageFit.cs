using Laydown.Artwork.Pages;
using Laydown.Measures;

namespace Laydown.Artwork.Checks;

/// <summary>One page and how it comes to the finished size: its trim is scaled to the finished piece.</summary>
/// <param name="File">The file.</param>
/// <param name="Page">The page.</param>
/// <param name="Wish">What it must serve.</param>
internal sealed record PageFit(ArtworkFile File, ArtworkPage Page, CheckWish Wish)
{
    /// <summary>Millimetres of the finished piece for one of the page, across.</summary>
    internal double GrowX => Wish.Finished.WidthMm / Math.Max(Page.TrimMm.WidthMm, 1e-6);

    /// <summary>Millimetres of the finished piece for one of the page, upward.</summary>
    internal double GrowY => Wish.Finished.HeightMm / Math.Max(Page.TrimMm.HeightMm, 1e-6);

    /// <summary>The greater of both: what makes pictures coarser.</summary>
    internal double GrowMost => Math.Max(GrowX, GrowY);

    /// <summary>The lesser of both: what leaves lines and letters smallest.</summary>
    internal double GrowLeast => Math.Min(GrowX, GrowY);

    /// <summary>Whether the file is one picture of pixels.</summary>
    internal bool IsPicture => File.Kind is ArtworkKind.Tiff or ArtworkKind.Png or ArtworkKind.Jpeg;

    internal Finding Stop(string code, RectMm? place, string what, string measured, string wanted, string source, string? repair = null) =>
        new(code, Severity.Stop, Page.Number, place, what, measured, wanted, repair, source);

    internal Finding Warn(string code, RectMm? place, string what, string measured, string wanted, string source, string? repair = null) =>
        new(code, Severity.Warn, Page.Number, place, what, measured, wanted, repair, source);

    internal Finding Note(string code, RectMm? place, string what, string measured, string wanted, string source, string? repair = null) =>
        new(code, Severity.Note, Page.Number, place, what, measured, wanted, repair, source);
}
