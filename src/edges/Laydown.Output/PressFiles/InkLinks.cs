using Laydown.Colour.Inversion;
using Laydown.Formats.Icc;
using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;

namespace Laydown.Output.PressFiles;

/// <summary>Fetches the device link of a print condition: from the CMYK of plates to all its colour inks.</summary>
internal static class InkLinks
{
    private static readonly Dictionary<string, InkRole> Roles = new(StringComparer.OrdinalIgnoreCase)
    {
        ["Cyan"] = InkRole.Cyan,
        ["Magenta"] = InkRole.Magenta,
        ["Yellow"] = InkRole.Yellow,
        ["Black"] = InkRole.Black,
        ["Light Cyan"] = InkRole.LightCyan,
        ["Light Magenta"] = InkRole.LightMagenta,
    };

    /// <summary>The link, no link where the condition names none, or why its file cannot be taken.</summary>
    /// <param name="condition">The print condition.</param>
    /// <param name="profilePath">Its CMYK profile; the link lies beside it.</param>
    public static Reading<IReadOnlyList<LinkTables>> Of(PrintCondition condition, string profilePath)
    {
        if (condition.InkLink is not { } name)
            return Reading.Of<IReadOnlyList<LinkTables>>([]);
        string path = Path.Combine(Path.GetDirectoryName(profilePath) ?? "", Path.GetFileName(name));
        if (!File.Exists(path))
            return Reading.Refused<IReadOnlyList<LinkTables>>(new InputFault(name, null, "device link", "no such file", "a link beside the profile"));
        return DeviceLinkProfile.Read(name, File.ReadAllBytes(path)).Then(link => link.Channels == 4 && link.InkNames.All(Roles.ContainsKey)
            ? Reading.Of<IReadOnlyList<LinkTables>>([link])
            : Reading.Refused<IReadOnlyList<LinkTables>>(new InputFault(
                name, null, "device link", Invariant($"{link.Channels} channels to {string.Join(", ", link.InkNames)}"),
                Invariant($"CMYK to inks among {string.Join(", ", Roles.Keys)}"))));
    }

    /// <summary>What the inks of a link are, in order.</summary>
    public static IReadOnlyList<InkRole> RolesOf(LinkTables link) => [.. link.InkNames.Select(n => Roles[n])];
}
