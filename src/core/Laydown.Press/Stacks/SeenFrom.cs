namespace Laydown.Press.Stacks;

/// <summary>From which sides the finished piece is looked at.</summary>
public enum SeenFrom
{
    /// <summary>From the front alone: the side of the first surface.</summary>
    OneSide,

    /// <summary>From the front and from the back.</summary>
    BothSides,
}
