namespace Laydown.Press.Stacks;

/// <summary>Which face of the sheet carries ink, as the viewer stands.</summary>
public enum SheetFace
{
    /// <summary>First surface: the face toward the viewer.</summary>
    First,

    /// <summary>Second surface: the face away from the viewer, seen through the sheet.</summary>
    Second,
}
