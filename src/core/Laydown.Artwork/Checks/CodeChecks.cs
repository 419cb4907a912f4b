using Laydown.Artwork.Pages;
using Laydown.Measures;

namespace Laydown.Artwork.Checks;

/// <summary>Bar codes at the finished size: module, quiet zone, check digit. [GS1GenSpecs]</summary>
internal static class CodeChecks
{
    /// <summary>How far a module may be off a whole number of dots, dots.</summary>
    private const double DotSlack = 0.05;

    internal static IEnumerable<Finding> Of(PageFit fit) =>
        fit.Page.Codes.SelectMany(c => (IEnumerable<Finding>)[.. Module(fit, c), .. Dots(fit, c), .. Quiet(fit, c), .. Digit(fit, c)]);

    private static IEnumerable<Finding> Module(PageFit fit, CodeUse code)
    {
        double module = code.ModuleMm * fit.GrowLeast;
        if (CodeRules.For(code.Symbology) is not { LeastModuleMm: > 0 } rule)
            yield break;

        string measured = Invariant($"{module:0.###} mm"), wanted = Invariant($"{rule.LeastModuleMm:0.###} to {rule.MostModuleMm:0.###} mm");
        if (module < rule.LeastModuleMm - 5e-4)
            yield return fit.Stop(
                "code-module-small",
                code.Place,
                Invariant($"The {code.Symbology} code is too small to be read for certain."),
                measured,
                wanted,
                Sources.Codes);
        else if (module > rule.MostModuleMm + 5e-4)
            yield return fit.Warn(
                "code-module-large",
                code.Place,
                Invariant($"The {code.Symbology} code is larger than its standard allows."),
                measured,
                wanted,
                Sources.Codes);
    }

    private static IEnumerable<Finding> Dots(PageFit fit, CodeUse code)
    {
        double module = code.ModuleMm * fit.GrowLeast;
        IEnumerable<int> ways = CodeRules.IsTwoDimensional(code.Symbology) ? [fit.Wish.ScanDpi, fit.Wish.FeedDpi] : [fit.Wish.ScanDpi];
        foreach (int dpi in ways.Distinct())
        {
            double dots = module / 25.4 * dpi, whole = Math.Max(1, Math.Round(dots));
            if (Math.Abs(dots - whole) > DotSlack)
                yield return fit.Warn(
                    "code-not-whole-dots",
                    code.Place,
                    Invariant($"Modules of the {code.Symbology} code are no whole number of dots; bars come out unevenly wide."),
                    Invariant($"{module:0.####} mm, {dots:0.##} dots at {dpi} dpi"),
                    Invariant($"{whole:0} dots, {whole * 25.4 / dpi:0.####} mm"),
                    Sources.Practice);
        }
    }

    private static IEnumerable<Finding> Quiet(PageFit fit, CodeUse code)
    {
        if (code.QuietZoneModules is double quiet && CodeRules.For(code.Symbology) is CodeRule rule && quiet < rule.QuietModules - 0.25)
            yield return fit.Warn(
                "code-quiet-zone",
                code.Place,
                Invariant($"Something stands too near the {code.Symbology} code."),
                Invariant($"{quiet:0.#} modules clear"),
                Invariant($"{rule.QuietModules} modules on the narrower side"),
                rule.Source);
    }

    private static IEnumerable<Finding> Digit(PageFit fit, CodeUse code)
    {
        bool counted = code.Symbology is "EAN-13" or "EAN-8" or "UPC-A" && code.Text.Length > 1 && code.Text.All(char.IsAsciiDigit);
        if (counted && CodeRules.CheckDigit(code.Text[..^1]) != code.Text[^1] - '0')
            yield return fit.Stop(
                "code-check-digit",
                code.Place,
                Invariant($"The number of the {code.Symbology} code is wrong: its last digit does not fit."),
                code.Text,
                Invariant($"{code.Text[..^1]}{CodeRules.CheckDigit(code.Text[..^1])}"),
                Sources.Codes);
    }
}
