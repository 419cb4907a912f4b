namespace Laydown.Press.Inks;

/// <summary>The optics of an ink set: what each of its inks does with light, and the readings behind it.</summary>
/// <param name="Id">Stable short name, lower case with hyphens; ink sets and print conditions name it.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Invented">Whether it is invented for the demo.</param>
/// <param name="InkSetId">The ink set it was read for.</param>
/// <param name="Inks">Inks with optics, each role once; inks that are missing here are taken from a generic class and flagged.</param>
/// <param name="Fit">How well it fits its readings, or null when it rests on none.</param>
public sealed record InkOptics(
    string Id, string Name, bool Invented, string InkSetId, IReadOnlyList<InkLight> Inks, OpticsFit? Fit = null)
{
    /// <summary>The optics of that role, or null.</summary>
    public InkLight? Find(InkRole role) => Inks.FirstOrDefault(i => i.Role == role);
}
