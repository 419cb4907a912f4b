using Laydown.Geometry.Shapes;

namespace Laydown.Geometry.Outlines;

/// <summary>One ring with its holes that came sound, or was made sound.</summary>
/// <param name="Field">Where in the file its outer ring stands.</param>
/// <param name="Area">The shape; one part.</param>
public sealed record MendedShape(string Field, Shape Area);
