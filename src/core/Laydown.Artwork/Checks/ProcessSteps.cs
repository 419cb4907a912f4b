namespace Laydown.Artwork.Checks;

/// <summary>Names of processing steps: groups and their types. [ISO19593-1]</summary>
public static class ProcessSteps
{
    private static readonly Dictionary<string, string[]> Types = new(StringComparer.Ordinal)
    {
        ["Structural"] =
        [
            "Cutting", "PartialCutting", "ReversePartialCutting", "Creasing", "ReverseCreasing", "CuttingCreasing", "ReverseCuttingCreasing",
            "PartialCuttingCreasing", "ReversePartialCuttingCreasing", "Drilling", "Gluing", "FoilStamping", "ColdFoilStamping", "Embossing",
            "Debossing", "Perforating", "Bleed", "VarnishFree", "InkFree", "InkVarnishFree", "Folding", "Punching", "Stapling",
        ],
        ["Positions"] = ["Hologram", "Barcode", "ContentArea", "CodingMarking", "Imprinting"],
        ["PlateMaking"] = ["StationInfo", "PlateStamping", "OverstepArea", "Cutting", "Bleed", "NoMark"],
        ["White"] = [],
        ["Varnish"] = [],
        ["Primer"] = [],
        ["Braille"] = [],
        ["Legend"] = [],
        ["Dimensions"] = [],
    };

    /// <summary>What a name is worth, written <c>Group/Type</c>, or <c>Group</c> for the groups without types.</summary>
    /// <remarks>A group with types wants one; a group without types takes none. An own name carries a prefix of letters and an underscore.</remarks>
    public static StepName Judge(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        string[] parts = name.Split('/', 2);
        if (!Types.TryGetValue(parts[0], out string[]? types))
            return IsOwn(parts[0]) ? StepName.Own : StepName.Unknown;
        if (types.Length == 0)
            return parts.Length == 1 ? StepName.Standard : StepName.Unknown;
        if (parts.Length == 1)
            return StepName.Unknown;

        return types.Contains(parts[1], StringComparer.Ordinal) ? StepName.Standard : IsOwn(parts[1]) ? StepName.Own : StepName.Unknown;
    }

    private static bool IsOwn(string part)
    {
        int at = part.IndexOf('_', StringComparison.Ordinal);
        return at > 0 && at < part.Length - 1 && part[..at].All(char.IsAsciiLetterOrDigit);
    }
}
