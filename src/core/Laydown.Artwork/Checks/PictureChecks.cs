using Laydown.Artwork.Pages;
using Laydown.Measures;

namespace Laydown.Artwork.Checks;

/// <summary>Resolution and depth of pictures.</summary>
internal static class PictureChecks
{
    private const int MostNamed = 12;

    internal static IEnumerable<Finding> Of(PageFit fit) =>
        [.. Resolution(fit).Take(MostNamed), .. Depth(fit).Take(MostNamed), .. Alpha(fit)];

    private static IEnumerable<Finding> Resolution(PageFit fit)
    {
        double wanted = Acuity.Ppi(fit.Wish.ViewingDistanceM);
        foreach (PlacedImage image in fit.Page.Images.OrderBy(i => i.EffectivePpi))
        {
            double ppi = image.EffectivePpi / fit.GrowMost;
            string measured = Invariant($"{ppi:0.#} ppi at the finished size ({image.PixelWidth} × {image.PixelHeight} pixels)");
            string asked = Invariant($"{wanted:0.#} ppi: one arc minute at {fit.Wish.ViewingDistanceM:0.##} m");
            if (image.PixelWidth <= 1 && image.PixelHeight <= 1)
                yield return fit.Stop("picture-one-pixel", image.Place, "The picture is a single pixel.", measured, asked, Sources.Acuity);
            else if (ppi < wanted / 2)
                yield return fit.Stop(
                    "picture-ppi",
                    image.Place,
                    "The picture is far too coarse: pixels are over two arc minutes wide and will be seen.",
                    measured,
                    asked,
                    Sources.Acuity);
            else if (ppi < wanted)
                yield return fit.Warn(
                    "picture-ppi",
                    image.Place,
                    "The picture is coarser than the eye resolves at the viewing distance.",
                    measured,
                    asked,
                    Sources.Acuity);
            else if (ppi > 2.0 * fit.Wish.ContonePpi)
                yield return fit.Note(
                    "picture-finer-than-press",
                    image.Place,
                    "The picture is more than twice as fine as the press files; the rest only costs time.",
                    measured,
                    Invariant($"{fit.Wish.ContonePpi} ppi, the press files"),
                    Sources.Practice);
        }
    }

    private static IEnumerable<Finding> Depth(PageFit fit)
    {
        foreach (PlacedImage image in fit.Page.Images.Where(i => i.BitsPerComponent is not (1 or 8)))
            yield return fit.Note(
                "picture-depth",
                image.Place,
                image.BitsPerComponent > 8 ? "The picture has more depth than the press files carry; it is rounded." : "The picture has few tones; steps may show.",
                Invariant($"{image.BitsPerComponent} bits for each colour"),
                "8 bits",
                Sources.Practice);
    }

    private static IEnumerable<Finding> Alpha(PageFit fit)
    {
        if (fit.Page.HasAlpha && !fit.Wish.WhiteFromAlpha)
            yield return fit.Note(
                "alpha-unused",
                null,
                "The picture has an alpha that nothing is taken from; see-through parts stay unprinted.",
                "alpha",
                "no alpha, or white from alpha",
                Sources.Practice);
        if (!fit.Page.HasAlpha && fit.Wish.WhiteFromAlpha)
            yield return fit.Stop(
                "alpha-missing",
                null,
                "White is to come from the file's alpha, and there is none.",
                "no alpha",
                "a picture with alpha",
                Sources.Practice);
    }
}
