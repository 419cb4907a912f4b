namespace Laydown.Artwork.Pages;

/// <summary>A font of a page.</summary>
/// <param name="Name">Its name in the file.</param>
/// <param name="Kind">Such as <c>TrueType</c>, <c>Type1</c>, <c>Type3</c>, <c>Type0</c>.</param>
/// <param name="Embedded">Whether its shapes are in the file.</param>
public sealed record FontUse(string Name, string Kind, bool Embedded);
