using Laydown.Artwork.Pages;
using Laydown.Geometry.Shapes;
using Laydown.Measures;

namespace Laydown.Artwork.Checks;

/// <summary>Cut paths: there, closed, not crossing themselves, within the printed piece.</summary>
internal static class CutChecks
{
    /// <summary>How far a path may lie outside the printed piece, mm of the page (common practice, no source).</summary>
    private const double OutsideMm = 0.2;

    /// <summary>A gap the tool closes by its own width, mm of the finished piece (common practice, no source).</summary>
    private const double ClosedGapMm = 0.1;

    private const int MostNamed = 12;

    internal static IEnumerable<Finding> Of(PageFit fit) => [.. Wanted(fit), .. fit.Wish.ContourCut ? Paths(fit).Take(MostNamed) : []];

    private static IEnumerable<Finding> Wanted(PageFit fit)
    {
        IReadOnlyList<CutPath> cuts = [.. fit.Page.CutPaths.Where(p => p.ProcessStep is "Cutting" or "PartialCutting" or "CuttingCreasing")];
        bool named = fit.Page.Separations.Any(s => s.Role is SeparationRole.Cut);
        if (fit.Wish.ContourCut && cuts.Count == 0)
            yield return fit.Stop(
                "cut-missing",
                null,
                named ? "The page has a separation for cutting, but no stroked path in it." : "The piece is cut along a contour, and the page has no path for it.",
                named ? "a separation, no stroked path" : "no cut path",
                "a stroked path in a separation of its own, step Cutting",
                Sources.Steps);
        else if (!fit.Wish.ContourCut && cuts.Count > 0)
            yield return fit.Note(
                "cut-unused",
                Outline.Of(cuts[0].Points, closed: false).Bounds,
                "The page has a cut path, but no contour cut was ordered.",
                Invariant($"{cuts.Count} paths"),
                "no cut path, or a contour cut in the order",
                Sources.Practice);
    }

    private static IEnumerable<Finding> Paths(PageFit fit)
    {
        RectMm trim = fit.Page.TrimMm;
        RectMm printed = new(
            trim.XMm - (fit.Wish.BleedMm / fit.GrowX), trim.YMm - (fit.Wish.BleedMm / fit.GrowY),
            trim.WidthMm + (2 * fit.Wish.BleedMm / fit.GrowX), trim.HeightMm + (2 * fit.Wish.BleedMm / fit.GrowY));
        foreach (CutPath path in fit.Page.CutPaths)
            foreach (Finding finding in One(fit, path, printed))
                yield return finding;
    }

    private static IEnumerable<Finding> One(PageFit fit, CutPath path, RectMm printed)
    {
        int corners = path.Points.Distinct().Count();
        if (corners < (path.Closed ? 3 : 2))
        {
            yield return fit.Stop(
                "cut-point",
                null,
                "A cut path is a single point or lies on itself.",
                Invariant($"{corners} different corners"),
                "at least 3 corners",
                Sources.Practice);
            yield break;
        }

        Outline outline = Outline.Of(path.Points, path.Closed);
        bool open = !path.Closed && outline.GapMm * fit.GrowMost > ClosedGapMm;
        if (open && path.ProcessStep is "Cutting")
            yield return fit.Stop(
                "cut-open",
                outline.Bounds,
                "A cut path is open: the piece would not come free.",
                Invariant($"a gap of {outline.GapMm * fit.GrowMost:0.##} mm"),
                "a closed path",
                Sources.Practice);
        if (outline.FirstCrossing() is PointMm at)
            yield return fit.Stop(
                "cut-crosses-itself",
                new(at.XMm - 1, at.YMm - 1, 2, 2),
                "A cut path crosses itself: the tool would cut into the piece.",
                Invariant($"a crossing at {at.XMm:0.#}, {at.YMm:0.#} mm"),
                "a path without crossings",
                Sources.Practice);
        if (!outline.LiesIn(printed, OutsideMm))
            yield return fit.Stop(
                "cut-outside",
                outline.Bounds,
                "A cut path leaves the printed piece.",
                Invariant($"{outline.Bounds.Size} at {outline.Bounds.XMm:0.#}, {outline.Bounds.YMm:0.#} mm"),
                Invariant($"within {printed.Size} at {printed.XMm:0.#}, {printed.YMm:0.#} mm"),
                Sources.Practice);
    }
}
