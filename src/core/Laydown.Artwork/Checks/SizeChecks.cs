using Laydown.Artwork.Pages;
using Laydown.Measures;

namespace Laydown.Artwork.Checks;

/// <summary>Size, proportion, scale and page limits.</summary>
internal static class SizeChecks
{
    /// <summary>Largest side of a page in many programs: 14 400 units of 1/72 inch. [PDFReference16]</summary>
    private const double LargestSideMm = 5080;

    private const double OffPercentWarn = 0.5, OffPercentStop = 2, ScalePercent = 2, SizePercent = 1;

    internal static IEnumerable<Finding> Of(PageFit fit) =>
        [.. Proportion(fit), .. Scale(fit), .. TrimBox(fit), .. PageLimit(fit), .. UserUnit(fit), .. DeclaredPpi(fit)];

    private static IEnumerable<Finding> Proportion(PageFit fit)
    {
        RectMm trim = fit.Page.TrimMm;
        double off = Percent(trim.WidthMm / trim.HeightMm, fit.Wish.Finished.WidthMm / fit.Wish.Finished.HeightMm);
        string measured = Invariant($"{trim.Size}, {off:0.##} % off"), wanted = Invariant($"the proportion of {fit.Wish.Finished}, to {OffPercentWarn} %");
        if (off <= OffPercentWarn)
            yield break;

        bool lies = Percent(trim.HeightMm / trim.WidthMm, fit.Wish.Finished.WidthMm / fit.Wish.Finished.HeightMm) <= OffPercentWarn;
        if (lies)
            yield return fit.Stop(
                "page-lies",
                trim,
                "The page lies on its side: its proportion is that of the finished piece turned.",
                measured,
                wanted,
                Sources.Practice);
        else if (off > OffPercentStop)
            yield return fit.Stop(
                "proportion",
                trim,
                "The page has another proportion than the finished piece; it would be stretched.",
                measured,
                wanted,
                Sources.Practice);
        else
            yield return fit.Warn(
                "proportion",
                trim,
                "The page has not quite the proportion of the finished piece; it will be stretched a little.",
                measured,
                wanted,
                Sources.Practice);
    }

    private static IEnumerable<Finding> Scale(PageFit fit)
    {
        // A picture of pixels has no size of its own; what it declares is looked at by itself.
        double across = fit.Page.TrimMm.WidthMm * fit.Wish.ArtworkScale / fit.Wish.Finished.WidthMm;
        double upward = fit.Page.TrimMm.HeightMm * fit.Wish.ArtworkScale / fit.Wish.Finished.HeightMm;
        double ratio = Math.Sqrt(across * upward);
        if (fit.IsPicture || Percent(ratio, 1) <= SizePercent)
            yield break;

        string measured = Invariant($"{fit.Page.TrimMm.Size}, {ratio:0.###} times the size ordered at 1:{fit.Wish.ArtworkScale}");
        string wanted = Invariant($"{new SizeMm(fit.Wish.Finished.WidthMm / fit.Wish.ArtworkScale, fit.Wish.Finished.HeightMm / fit.Wish.ArtworkScale)}");
        double meant = fit.Wish.ArtworkScale / ratio;
        bool round = meant >= 0.99 && ((double[])[1, 2, 4, 5, 10, 20, 25, 50, 100]).Any(s => Percent(meant, s) <= ScalePercent);
        if (round)
            yield return fit.Warn(
                "scale",
                fit.Page.TrimMm,
                Invariant($"The file seems to be drawn at 1:{meant:0} but was ordered as 1:{fit.Wish.ArtworkScale}."),
                measured,
                wanted,
                Sources.Practice,
                Invariant($"The trim is scaled to the finished size, {fit.GrowX * 100:0.#} %."));
        else
            yield return fit.Warn(
                "trim-size",
                fit.Page.TrimMm,
                "The trim has another size than the finished piece.",
                measured,
                wanted,
                Sources.Practice,
                Invariant($"The trim is scaled to the finished size, {fit.GrowX * 100:0.#} %."));
    }

    private static IEnumerable<Finding> TrimBox(PageFit fit)
    {
        if (fit.File.Kind is not ArtworkKind.Pdf || fit.Page.HasTrimBox)
            yield break;

        SizeMm printed = new(fit.Wish.Finished.WidthMm + (2 * fit.Wish.BleedMm), fit.Wish.Finished.HeightMm + (2 * fit.Wish.BleedMm));
        bool holdsBleed = fit.Wish.BleedMm > 0 && Same(fit.Page.MediaMm.WidthMm * fit.Wish.ArtworkScale, printed.WidthMm) && Same(fit.Page.MediaMm.HeightMm * fit.Wish.ArtworkScale, printed.HeightMm);
        yield return fit.Warn(
            "trim-box-missing",
            null,
            holdsBleed
                ? "The page has no trim box and the size of the piece with its bleed: it would be printed smaller than meant."
                : "The page has no trim box; the whole page is taken as the finished piece.",
            Invariant($"page {fit.Page.MediaMm}, no trim box"),
            Invariant($"a trim box of {fit.Wish.Finished}"),
            Sources.Practice);
    }

    private static IEnumerable<Finding> PageLimit(PageFit fit)
    {
        double side = Math.Max(fit.Page.MediaMm.WidthMm, fit.Page.MediaMm.HeightMm);
        if (fit.File.Kind is not ArtworkKind.Pdf || side < LargestSideMm - 0.2)
            yield break;

        string measured = Invariant($"{side / 1000:0.###} m"), wanted = Invariant($"under {LargestSideMm / 1000:0.##} m on each side, or a file at 1:10");
        if (fit.Page.UserUnit == 1 && side <= LargestSideMm + 0.2)
            yield return fit.Warn(
                "page-at-limit",
                null,
                "The page ends exactly at the limit of 14 400 units; it may have been cropped there.",
                measured,
                wanted,
                Sources.Pdf);
        else
            yield return fit.Note(
                "page-over-limit",
                null,
                "The page is larger than many programs can show; they may crop it.",
                measured,
                wanted,
                Sources.Pdf);
    }

    private static IEnumerable<Finding> UserUnit(PageFit fit)
    {
        if (fit.Page.UserUnit != 1)
            yield return fit.Note(
                "user-unit",
                null,
                "The page is measured in a unit of its own; programs that do not know it show another size.",
                Invariant($"UserUnit {fit.Page.UserUnit:0.###}: {fit.Page.MediaMm}, without it {fit.Page.MediaMm.WidthMm / fit.Page.UserUnit:0.#} × {fit.Page.MediaMm.HeightMm / fit.Page.UserUnit:0.#} mm"),
                "UserUnit 1",
                Sources.Pdf);
    }

    private static IEnumerable<Finding> DeclaredPpi(PageFit fit)
    {
        if (!fit.IsPicture || fit.Page.Images.Count == 0 || fit.Page.Images[0].DeclaredPpi is not double ppi || ppi <= 0)
            yield break;

        PlacedImage image = fit.Page.Images[0];
        double declared = image.PixelWidth / ppi * 25.4, ordered = fit.Wish.Finished.WidthMm / fit.Wish.ArtworkScale;
        if (Percent(declared, ordered) > 5)
            yield return fit.Note(
                "declared-ppi",
                null,
                "The resolution the picture declares does not lead to the finished size; its pixels are spread over the finished size instead.",
                Invariant($"{ppi:0.#} ppi: {declared:0.#} mm wide"),
                Invariant($"{image.PixelWidth / ordered * 25.4:0.#} ppi for {ordered:0.#} mm"),
                Sources.Practice,
                Invariant($"Printed at {image.PixelWidth / fit.Wish.Finished.WidthMm * 25.4:0.#} ppi."));
    }

    private static bool Same(double one, double other) => Percent(one, other) <= 0.2;

    private static double Percent(double value, double wanted) => 100 * Math.Abs((value / wanted) - 1);
}
