using Laydown.Artwork.Pages;

namespace Laydown.Formats.Pdf;

/// <summary>What a named separation means: by the processing step of the layer it stands on [ISO19593-1], else by a plain name.</summary>
public static class SeparationRoles
{
    private static readonly Dictionary<string, SeparationRole> Names = new(StringComparer.Ordinal)
    {
        ["white"] = SeparationRole.White,
        ["varnish"] = SeparationRole.Clear,
        ["clear"] = SeparationRole.Clear,
        ["gloss"] = SeparationRole.Clear,
        ["cut"] = SeparationRole.Cut,
        ["cutting"] = SeparationRole.Cut,
        ["cut line"] = SeparationRole.Cut,
        ["cut path"] = SeparationRole.Cut,
        ["through cut"] = SeparationRole.Cut,
        ["kiss cut"] = SeparationRole.Cut,
        ["partial cutting"] = SeparationRole.Cut,
        ["die"] = SeparationRole.Cut,
        ["die line"] = SeparationRole.Cut,
        ["drill"] = SeparationRole.Drill,
        ["drilling"] = SeparationRole.Drill,
        ["drill holes"] = SeparationRole.Drill,
        ["holes"] = SeparationRole.Drill,
        ["legend"] = SeparationRole.Legend,
        ["notes"] = SeparationRole.Legend,
        ["dimensions"] = SeparationRole.Legend,
        ["sizes"] = SeparationRole.Legend,
    };

    /// <summary>Process inks and the two special names, which are no separations of their own.</summary>
    public static bool IsProcess(string name) => name is "Cyan" or "Magenta" or "Yellow" or "Black" or "All" or "None";

    /// <summary>The role by name alone, upper and lower case, hyphens, underscores and a number at the end not counted.</summary>
    public static SeparationRole ByName(string name)
    {
        string plain = name.Replace('-', ' ').Replace('_', ' ').Trim().TrimEnd('0', '1', '2', '3', '4', '5', '6', '7', '8', '9').Trim().ToLowerInvariant();
        return Names.GetValueOrDefault(plain, SeparationRole.Unknown);
    }

    /// <summary>The role by processing step, or null where the step says nothing of it.</summary>
    /// <param name="step">Group and type, such as <c>Structural/Cutting</c> or <c>White</c>.</param>
    public static SeparationRole? ByStep(string? step)
    {
        if (step is null)
            return null;

        string[] parts = step.Split('/', 2);
        string type = parts.Length == 2 ? parts[1] : "";
        return parts[0] switch
        {
            "White" => SeparationRole.White,
            "Varnish" => SeparationRole.Clear,
            "Structural" when type.Contains("Cutting", StringComparison.Ordinal) || type == "Perforating" => SeparationRole.Cut,
            "Structural" when type is "Drilling" or "Punching" => SeparationRole.Drill,

            // Creases, glue, folds, zones, notes and sizes are shown to people and never printed.
            "Structural" or "Positions" or "PlateMaking" or "Legend" or "Dimensions" => SeparationRole.Legend,
            _ => null,
        };
    }

    /// <summary>The role by step, else by name.</summary>
    public static SeparationRole Of(string name, string? step) => ByStep(step) ?? ByName(name);

    /// <summary>Type of the processing step of a cut, told from the layer, else from the name.</summary>
    public static string CutStep(string name, string? step) =>
        ByStep(step) == SeparationRole.Cut ? step![(step!.IndexOf('/', StringComparison.Ordinal) + 1)..]
        : name.Contains("kiss", StringComparison.OrdinalIgnoreCase) || name.Contains("partial", StringComparison.OrdinalIgnoreCase) ? "PartialCutting"
        : "Cutting";
}
