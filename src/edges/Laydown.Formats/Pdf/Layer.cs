namespace Laydown.Formats.Pdf;

/// <summary>An optional content group.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Step">ISO 19593-1 group and type, such as <c>Structural/Cutting</c>; null without [ISO19593-1].</param>
/// <param name="Hidden">Whether it is off by default.</param>
internal sealed record Layer(string Name, string? Step, bool Hidden);
