namespace Laydown.Artwork.Pages;

/// <summary>A named separation of a page.</summary>
/// <param name="Name">Its name in the file.</param>
/// <param name="Role">What it means.</param>
/// <param name="ProcessStep">ISO 19593-1 group and type of the layer it stands on, such as <c>Structural/Cutting</c>; null without.</param>
/// <param name="Overprints">Whether it is set to overprint where it is used; null where that could not be told.</param>
public sealed record NamedSeparation(string Name, SeparationRole Role, string? ProcessStep, bool? Overprints);
