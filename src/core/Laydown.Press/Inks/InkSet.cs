namespace Laydown.Press.Inks;

/// <summary>The inks that are used together on a press.</summary>
/// <param name="Id">Stable short name, lower case with hyphens.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Invented">Whether it is invented for the demo.</param>
/// <param name="Inks">The inks, each role once.</param>
/// <param name="OpticsId">The optics of these inks (<see cref="InkOptics.Id"/>), or null while there are none.</param>
public sealed record InkSet(string Id, string Name, bool Invented, IReadOnlyList<Ink> Inks, string? OpticsId = null)
{
    /// <summary>The ink of that role, or null.</summary>
    public Ink? Find(InkRole role) => Inks.FirstOrDefault(i => i.Role == role);
}
