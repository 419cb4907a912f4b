using Laydown.Artwork.Pages;
using Laydown.Measures;

namespace Laydown.Artwork.Checks;

/// <summary>Named separations, their processing steps, and hidden layers.</summary>
internal static class LayerChecks
{
    internal static IEnumerable<Finding> Of(PageFit fit) =>
        [.. Hidden(fit), .. Roles(fit), .. Steps(fit), .. KnockOuts(fit), .. White(fit)];

    private static IEnumerable<Finding> Hidden(PageFit fit)
    {
        if (fit.Page.HiddenLayers.Count > 0)
            yield return fit.Warn(
                "layer-hidden",
                null,
                "Layers of the file are switched off; what they hold will not be printed.",
                string.Join(", ", fit.Page.HiddenLayers),
                "no hidden layers, or a word from the customer",
                Sources.Memory);
    }

    private static IEnumerable<Finding> Roles(PageFit fit)
    {
        foreach (NamedSeparation s in fit.Page.Separations.Where(s => s.Role is SeparationRole.Unknown))
            yield return fit.Warn(
                "separation-unknown",
                null,
                Invariant($"The separation “{s.Name}” has no known meaning; someone must say what it is for."),
                s.Name,
                "a processing step, or a word from the customer",
                Sources.Steps);
    }

    private static IEnumerable<Finding> Steps(PageFit fit)
    {
        foreach (NamedSeparation s in fit.Page.Separations.Where(s => s.ProcessStep is not null))
            switch (ProcessSteps.Judge(s.ProcessStep!))
            {
                case StepName.Unknown:
                    yield return fit.Warn(
                        "process-step-unknown",
                        null,
                        Invariant($"The layer of “{s.Name}” names a processing step the standard does not have."),
                        s.ProcessStep!,
                        "a group and type of ISO 19593-1, or an own name with a prefix",
                        Sources.Steps);
                    break;
                case StepName.Own:
                    yield return fit.Note(
                        "process-step-own",
                        null,
                        Invariant($"The layer of “{s.Name}” names a processing step of its maker's own."),
                        s.ProcessStep!,
                        "a group and type of ISO 19593-1",
                        Sources.Steps);
                    break;
            }
    }

    private static IEnumerable<Finding> KnockOuts(PageFit fit)
    {
        foreach (NamedSeparation s in fit.Page.Separations.Where(s => s.Overprints == false))
            if (s.Role is SeparationRole.White or SeparationRole.Clear)
                yield return fit.Warn(
                    "white-knocks-out",
                    null,
                    Invariant($"“{s.Name}” knocks out: the picture is missing wherever it lies."),
                    "knocks out",
                    "set to overprint",
                    Sources.Memory);
            else if (s.Role is SeparationRole.Cut or SeparationRole.Drill or SeparationRole.Legend)
                yield return fit.Warn(
                    "cut-knocks-out",
                    null,
                    Invariant($"“{s.Name}” knocks out: its lines stay bare in the picture."),
                    "knocks out",
                    "set to overprint",
                    Sources.Memory);
    }

    private static IEnumerable<Finding> White(PageFit fit)
    {
        if (fit.Wish.WhiteSeparation is not string name)
            yield break;

        bool there = fit.Page.Separations.Any(s => string.Equals(s.Name, name, StringComparison.Ordinal));
        string found = fit.Page.Separations.Count == 0 ? "no named separation" : string.Join(", ", fit.Page.Separations.Select(s => s.Name));
        if (!there)
            yield return fit.Stop(
                "white-missing",
                null,
                "White is to come from a named separation that the page does not have.",
                found,
                name,
                Sources.Steps);
    }
}
