namespace Laydown.Press.Conditions;

/// <summary>The shop's named colours.</summary>
/// <param name="Colours">The colours, each id once.</param>
public sealed record ColourLibrary(IReadOnlyList<LibraryColour> Colours)
{
    /// <summary>A library without colours.</summary>
    public static ColourLibrary Empty { get; } = new([]);
}
