namespace Laydown.Press.Stacks;

/// <summary>Someone who looks at the finished piece.</summary>
public enum Viewer
{
    /// <summary>Stands before the first surface.</summary>
    Front,

    /// <summary>Stands before the second surface.</summary>
    Back,
}
