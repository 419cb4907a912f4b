namespace Laydown.Optics.Looks;

/// <summary>A face of the sheet as the viewer of the finished piece stands.</summary>
public enum LookFace
{
    /// <summary>First surface: the face toward the viewer.</summary>
    First,

    /// <summary>Second surface: the face away from the viewer.</summary>
    Second,
}
