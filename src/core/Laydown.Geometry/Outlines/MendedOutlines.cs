using Laydown.Measures;

namespace Laydown.Geometry.Outlines;

/// <summary>Shapes made of the lines of a file, and what had to be mended.</summary>
/// <param name="Shapes">At least one; in the order of their outer rings in the file.</param>
/// <param name="Findings">What was repaired or left out, with place and measure; empty where all was sound.</param>
public sealed record MendedOutlines(IReadOnlyList<MendedShape> Shapes, IReadOnlyList<Finding> Findings);
