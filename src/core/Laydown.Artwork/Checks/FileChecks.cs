using Laydown.Artwork.Pages;
using Laydown.Measures;

namespace Laydown.Artwork.Checks;

/// <summary>The file as a whole: its length and its pages.</summary>
internal static class FileChecks
{
    /// <summary>Under this a file hardly holds a picture, bytes (common practice, no source).</summary>
    private const long TinyBytes = 600;

    internal static IEnumerable<Finding> Of(ArtworkFile file, CheckWish wish) => [.. Tiny(file), .. Pages(file, wish), .. Pair(file, wish)];

    private static IEnumerable<Finding> Tiny(ArtworkFile file)
    {
        if (file.Bytes < TinyBytes)
            yield return new(
                "file-tiny",
                Severity.Warn,
                null,
                null,
                "The file is hardly long enough to hold a picture.",
                Invariant($"{file.Bytes} bytes"),
                Invariant($"at least {TinyBytes} bytes"),
                null,
                Sources.Practice);
    }

    private static IEnumerable<Finding> Pages(ArtworkFile file, CheckWish wish)
    {
        int used = Math.Max(wish.SecondPage ? 2 : 1, wish.LastPage);
        if (file.Pages.Count < used)
            yield return new(
                "page-missing",
                Severity.Stop,
                null,
                null,
                wish.SecondPage && file.Pages.Count < 2
                    ? "A panel of two pictures needs a second page: the picture that shows when lit, or from the back."
                    : "A layer is made from a page that the file does not have, such as a mask picture.",
                Invariant($"{file.Pages.Count} page{(file.Pages.Count == 1 ? "" : "s")}"),
                Invariant($"{used} pages"),
                null,
                Sources.Practice);
        if (file.Pages.Count > used)
            yield return new(
                "pages-unused",
                file.Pages.Count > 10 ? Severity.Warn : Severity.Note,
                null,
                null,
                Invariant($"Only {(used == 1 ? "page 1 is" : used == 2 ? "pages 1 and 2 are" : Invariant($"pages 1 to {used} are"))} printed."),
                Invariant($"{file.Pages.Count} pages"),
                Invariant($"{used}"),
                null,
                Sources.Practice);
    }

    private static IEnumerable<Finding> Pair(ArtworkFile file, CheckWish wish)
    {
        if (!wish.SecondPage || file.Pages.Count < 2)
            yield break;

        SizeMm day = file.Pages[0].TrimMm.Size, lit = file.Pages[1].TrimMm.Size;
        if (Math.Abs(day.WidthMm - lit.WidthMm) > 0.2 || Math.Abs(day.HeightMm - lit.HeightMm) > 0.2)
            yield return new(
                "pages-differ",
                Severity.Stop,
                2,
                file.Pages[1].TrimMm,
                "The picture of page 2 has another size than that of page 1; they would not lie over each other.",
                Invariant($"page 1 {day}, page 2 {lit}"),
                "one size",
                null,
                Sources.Practice);
    }
}
