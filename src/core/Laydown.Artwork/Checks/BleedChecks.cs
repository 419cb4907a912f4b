using Laydown.Measures;

namespace Laydown.Artwork.Checks;

/// <summary>Whether there is picture beyond the trim.</summary>
internal static class BleedChecks
{
    /// <summary>What the bleed may fall short of the wanted one and still be taken as whole, mm (common practice, no source).</summary>
    private const double SlackMm = 0.1;

    internal static IEnumerable<Finding> Of(PageFit fit)
    {
        RectMm trim = fit.Page.TrimMm, bleed = fit.Page.BleedMm;
        double least = Math.Max(0, Math.Min(
            Math.Min((trim.XMm - bleed.XMm) * fit.GrowX, (bleed.RightMm - trim.RightMm) * fit.GrowX),
            Math.Min((trim.YMm - bleed.YMm) * fit.GrowY, (bleed.TopMm - trim.TopMm) * fit.GrowY)));
        if (least >= fit.Wish.BleedMm - SlackMm)
            yield break;

        string measured = Invariant($"{least:0.##} mm on the narrowest side"), wanted = Invariant($"{fit.Wish.BleedMm:0.##} mm on each side");
        if (least <= SlackMm)
            yield return fit.Warn(
                "bleed-missing",
                trim,
                "The picture ends at the trim: a cut a little off leaves a bare edge.",
                measured,
                wanted,
                Sources.Practice,
                Invariant($"The edge is mirrored outward by {fit.Wish.BleedMm:0.##} mm."));
        else
            yield return fit.Warn(
                "bleed-small",
                trim,
                "The picture reaches beyond the trim, but not far enough.",
                measured,
                wanted,
                Sources.Practice,
                Invariant($"The edge is mirrored outward by the missing {fit.Wish.BleedMm - least:0.##} mm."));
    }
}
