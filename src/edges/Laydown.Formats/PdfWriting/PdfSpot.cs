namespace Laydown.Formats.PdfWriting;

/// <summary>A named separation with the process colour that stands for it on a screen.</summary>
/// <param name="Name">Its name, such as <c>White</c> or <c>Cut</c>.</param>
/// <param name="Cyan">Stand-in at full tint, 0 to 1.</param>
/// <param name="Magenta">Stand-in at full tint, 0 to 1.</param>
/// <param name="Yellow">Stand-in at full tint, 0 to 1.</param>
/// <param name="Black">Stand-in at full tint, 0 to 1.</param>
public sealed record PdfSpot(string Name, double Cyan, double Magenta, double Yellow, double Black);
