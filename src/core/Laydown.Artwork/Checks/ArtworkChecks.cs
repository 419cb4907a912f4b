using Laydown.Artwork.Pages;
using Laydown.Measures;

namespace Laydown.Artwork.Checks;

/// <summary>All checks of one file against what it must serve.</summary>
public static class ArtworkChecks
{
    /// <summary>Findings of all checks, worst first; within one severity in the order of pages and checks. Empty where nothing was found.</summary>
    /// <remarks>Looks at page 1, and at page 2 where a lit picture is wanted; says how many pages are left unused.</remarks>
    /// <exception cref="ArgumentException">The wish holds a size, distance or resolution that is not over 0.</exception>
    public static IReadOnlyList<Finding> Run(ArtworkFile file, CheckWish wish)
    {
        ArgumentNullException.ThrowIfNull(file);
        Demand(wish);
        IEnumerable<PageFit> pages = file.Pages.Take(wish.SecondPage ? 2 : 1).Select(p => new PageFit(file, p, wish));
        return [.. FileChecks.Of(file, wish).Concat(pages.SelectMany(OfPage)).OrderByDescending(f => f.Severity)];
    }

    private static IEnumerable<Finding> OfPage(PageFit fit)
    {
        // Without a trim of some size nothing else can be measured.
        RectMm trim = fit.Page.TrimMm;
        if (!(trim.WidthMm > 0.01 && trim.HeightMm > 0.01))
            return [fit.Stop("trim-empty", null, "The page has no size.", Invariant($"{trim.WidthMm:0.###} × {trim.HeightMm:0.###} mm"), Invariant($"{fit.Wish.Finished}"), Sources.Practice)];

        // Cut, white and alpha belong to the first page; the lit picture of a panel only adds colour.
        IEnumerable<Finding> both = [.. SizeChecks.Of(fit), .. BleedChecks.Of(fit), .. ColourChecks.Of(fit), .. MarkChecks.Of(fit), .. CodeChecks.Of(fit)];
        PageFit pictures = fit.Page.Number == 1 ? fit : fit with { Wish = fit.Wish with { WhiteFromAlpha = false } };
        IEnumerable<Finding> layers = fit.Page.Number == 1 ? [.. LayerChecks.Of(fit), .. CutChecks.Of(fit)] : LayerChecks.Of(fit with { Wish = fit.Wish with { WhiteSeparation = null } });
        return both.Concat(PictureChecks.Of(pictures)).Concat(layers);
    }

    private static void Demand(CheckWish wish)
    {
        ArgumentNullException.ThrowIfNull(wish);
        Bounds.Within(wish.Finished.WidthMm, 0.1, 500_000, nameof(wish));
        Bounds.Within(wish.Finished.HeightMm, 0.1, 500_000, nameof(wish));
        Bounds.Within(wish.BleedMm, 0, 10_000, nameof(wish));
        Bounds.Within(wish.ArtworkScale, 1, 1000, nameof(wish));
        Bounds.Within(wish.ViewingDistanceM, 0.05, 10_000, nameof(wish));
        Bounds.Within(wish.ScanDpi, 1, 100_000, nameof(wish));
        Bounds.Within(wish.FeedDpi, 1, 100_000, nameof(wish));
        Bounds.Within(wish.ContonePpi, 1, 100_000, nameof(wish));
        Bounds.Within(wish.TotalInkLimitPercent, 1, 10_000, nameof(wish));
    }
}
