using Laydown.Artwork.Pages;
using Laydown.Measures;

namespace Laydown.Artwork.Checks;

/// <summary>Colour spaces, total ink, transparency, overprint.</summary>
internal static class ColourChecks
{
    internal static IEnumerable<Finding> Of(PageFit fit) => [.. Spaces(fit), .. TotalInk(fit), .. Blending(fit), .. Spots(fit)];

    private static IEnumerable<Finding> Spaces(PageFit fit)
    {
        bool Uses(string space) => fit.Page.ColourSpaces.Any(s => s.StartsWith(space, StringComparison.OrdinalIgnoreCase));
        string all = string.Join(", ", fit.Page.ColourSpaces);
        if (Uses("DeviceRGB") && fit.Page.Profile is null)
            yield return fit.Warn(
                "rgb-without-profile",
                null,
                "Red, green and blue without a profile: nobody can say which colours were meant.",
                all,
                "an ICC profile",
                Sources.Practice,
                "Taken as sRGB.");
        if (Uses("DeviceCMYK") && fit.Page.Profile is null && fit.File.OutputIntent is null)
            yield return fit.Note(
                "cmyk-without-intent",
                null,
                "CMYK without a named printing condition: ink amounts are taken as they are.",
                all,
                "an output intent or an ICC profile",
                Sources.Practice);
    }

    private static IEnumerable<Finding> TotalInk(PageFit fit)
    {
        if (fit.Page.TotalInkPercent is double ink && ink > fit.Wish.TotalInkLimitPercent + 0.5)
            yield return fit.Warn(
                "total-ink",
                fit.Page.TotalInkPlace,
                "More ink than the print condition takes: it may stay wet, crack or chip at the cut.",
                Invariant($"{ink:0} %"),
                Invariant($"at most {fit.Wish.TotalInkLimitPercent:0} %"),
                Sources.Practice,
                "Inks are reduced together to the limit in the separation.");
    }

    private static IEnumerable<Finding> Blending(PageFit fit)
    {
        if (fit.Page.Transparency)
            yield return fit.Note(
                "transparency",
                null,
                "The page blends see-through parts; look at the preview before printing.",
                "transparency",
                "none, or a look at the preview",
                Sources.Practice);
        if (fit.Page.Overprint)
            yield return fit.Note(
                "overprint",
                null,
                "The page switches overprint on: white things set to overprint vanish.",
                "overprint on",
                "overprint only where it is meant",
                Sources.Memory);
    }

    private static IEnumerable<Finding> Spots(PageFit fit)
    {
        foreach (NamedSeparation spot in fit.Page.Separations.Where(s => s.Role is SeparationRole.Colour))
            yield return fit.Note(
                "spot-colour",
                null,
                Invariant($"The colour “{spot.Name}” is printed from its stand-in, not from an ink of its own."),
                spot.Name,
                "a colour checked against a sample",
                Sources.Practice);
    }
}
