namespace Laydown.Formats.PdfWriting;

/// <summary>An optional-content group, with the processing step it stands for where it has one [ISO19593-1].</summary>
/// <param name="Name">Name shown to people.</param>
/// <param name="StepGroup">Such as <c>Structural</c> or <c>White</c>; null for an ordinary layer.</param>
/// <param name="StepType">Such as <c>Cutting</c>; null where the group has none.</param>
/// <param name="Visible">Whether it is on by default.</param>
public sealed record PdfLayer(string Name, string? StepGroup, string? StepType, bool Visible);
