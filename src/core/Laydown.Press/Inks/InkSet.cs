namespace Laydown.Press.Inks;

/// <summary>The inks that are used together on a press.</summary>
/// <param name="Id">Stable short name, lower case with hyphens.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Invented">Whether it is invented for the demo.</param>
/// <param name="Inks">The inks, each role once.</param>
public sealed record InkSet(string Id, string Name, bool Invented, IReadOnlyList<Ink> Inks)
{
    /// <summary>The ink of that role, or null.</summary>
    public Ink? Find(InkRole role) => Inks.FirstOrDefault(i => i.Role == role);
}
