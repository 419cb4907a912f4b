namespace Laydown.Press.Stacks;

/// <summary>What an ink layer is made of.</summary>
public enum InkGroup
{
    /// <summary>The process inks, light inks included.</summary>
    Colour,

    /// <summary>White.</summary>
    White,

    /// <summary>Clear.</summary>
    Clear,

    /// <summary>Black between whites, so that no light comes through.</summary>
    BlockOut,
}
