namespace Laydown.Press.Stacks;

/// <summary>Which face of the sheet carries ink, as the viewer stands.</summary>
public enum SheetFace
{
    /// <summary>First surface: the face toward the viewer; of two viewers, toward the front one.</summary>
    First,

    /// <summary>Second surface: the face away from the viewer, seen through the sheet.</summary>
    Second,
}
