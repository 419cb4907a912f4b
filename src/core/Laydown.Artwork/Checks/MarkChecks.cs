using Laydown.Artwork.Pages;
using Laydown.Measures;

namespace Laydown.Artwork.Checks;

/// <summary>Lines, letters and fonts.</summary>
internal static class MarkChecks
{
    /// <summary>Thinnest positive line, mm, and in device dots (common practice, no source).</summary>
    private const double ThinnestMm = 0.25, ThinnestDots = 3;

    /// <summary>Height of a capital as a share of the font size (common practice, no source).</summary>
    private const double CapitalShare = 0.7;

    /// <summary>Text at or under this size does not go over white, pt (common practice, no source).</summary>
    private const double SmallestOnWhitePt = 6;

    private const int MostNamed = 8;

    internal static IEnumerable<Finding> Of(PageFit fit) => [.. Lines(fit).Take(MostNamed), .. Texts(fit).Take(MostNamed), .. Fonts(fit)];

    private static IEnumerable<Finding> Lines(PageFit fit)
    {
        int dpi = Math.Min(fit.Wish.ScanDpi, fit.Wish.FeedDpi);
        double thinnest = Math.Max(ThinnestMm, ThinnestDots * 25.4 / dpi);
        foreach (LineUse line in fit.Page.ThinnestLines)
        {
            double width = line.WidthMm * fit.GrowLeast, dots = width / 25.4 * dpi;
            if (width < thinnest - 1e-9)
                yield return fit.Warn(
                    "line-thin",
                    line.Place,
                    dots < 1 ? "A line thinner than one dot of the press: it may vanish in parts." : "A line too thin to print evenly.",
                    Invariant($"{width:0.###} mm, {dots:0.#} dots at {dpi} dpi"),
                    Invariant($"{thinnest:0.##} mm: at least {ThinnestMm} mm and {ThinnestDots:0} dots"),
                    Sources.Practice);
        }
    }

    private static IEnumerable<Finding> Texts(PageFit fit)
    {
        double least = Acuity.CapitalMm(fit.Wish.ViewingDistanceM);
        foreach (TextUse text in fit.Page.SmallestTexts)
        {
            double size = text.SizePt * fit.GrowLeast, capital = size * CapitalShare * 25.4 / 72;
            if (capital < least)
                yield return fit.Warn(
                    "text-small",
                    text.Place,
                    Invariant($"“{text.Sample}” is too small to be read from {fit.Wish.ViewingDistanceM:0.##} m."),
                    Invariant($"capitals about {capital:0.##} mm ({size:0.#} pt)"),
                    Invariant($"{least:0.##} mm: five arc minutes at {fit.Wish.ViewingDistanceM:0.##} m"),
                    Sources.Acuity);
            else if (fit.Wish.PrintsWhite && size <= SmallestOnWhitePt)
                yield return fit.Warn(
                    "text-small-on-white",
                    text.Place,
                    Invariant($"“{text.Sample}” is too small to lie cleanly on white."),
                    Invariant($"{size:0.#} pt"),
                    Invariant($"over {SmallestOnWhitePt:0} pt"),
                    Sources.Practice);
        }
    }

    private static IEnumerable<Finding> Fonts(PageFit fit)
    {
        foreach (FontUse font in fit.Page.Fonts.Where(f => !f.Embedded))
            yield return fit.Stop(
                "font-not-embedded",
                null,
                Invariant($"The font “{font.Name}” is not in the file: another one would be printed."),
                Invariant($"{font.Name}, {font.Kind}, not embedded"),
                "embedded, or drawn as outlines",
                Sources.Practice);
    }
}
