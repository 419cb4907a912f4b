namespace Laydown.Shop.Colour;

/// <summary>How profile and link of a print condition are to be made.</summary>
/// <param name="Separation">Limits and black; limits left out are those of the condition.</param>
/// <param name="Nodes">Nodes along L*, a* and b* of the colour → ink tables: odd, 9 to 65.</param>
public sealed record MakeWish(SeparationWish Separation, int Nodes)
{
    /// <summary>As the condition says, 33 nodes.</summary>
    public static MakeWish Usual { get; } = new(SeparationWish.Usual, 33);
}
