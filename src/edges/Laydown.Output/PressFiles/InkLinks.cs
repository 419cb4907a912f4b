using Laydown.Colour.Inversion;
using Laydown.Formats.Icc;
using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;

namespace Laydown.Output.PressFiles;

/// <summary>Fetches the device link of a print condition: from the CMYK of plates to all its colour inks.</summary>
internal static class InkLinks
{
    private const long MostBytes = 64 << 20;

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
        long bytes = new FileInfo(path).Length;
        if (bytes > MostBytes)
        {
            return Reading.Refused<IReadOnlyList<LinkTables>>(
                new InputFault(name, null, "device link", Invariant($"{bytes} bytes"), Invariant($"at most {MostBytes} bytes")));
        }

        return DeviceLinkProfile.Read(name, File.ReadAllBytes(path)).Then(link => link.Channels == 4 && link.InkNames.All(n => InkRoleNames.Find(n) is not null)
            ? Reading.Of<IReadOnlyList<LinkTables>>([link])
            : Reading.Refused<IReadOnlyList<LinkTables>>(new InputFault(
                name, null, "device link", Invariant($"{link.Channels} channels to {string.Join(", ", link.InkNames)}"),
                "CMYK to inks that the product knows")));
    }

    /// <summary>What the inks of a link are, in order.</summary>
    public static IReadOnlyList<InkRole> RolesOf(LinkTables link) => [.. link.InkNames.Select(n => InkRoleNames.Find(n)!.Value)];
}
