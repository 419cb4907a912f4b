using Laydown.Geometry.Outlines;
using Laydown.Measures;

namespace Laydown.Formats.Svg;

/// <summary>The lines of an SVG file.</summary>
/// <param name="Contours">Lines in the order of the file, mm, y upward from the lower edge of the drawing, curves flattened.</param>
/// <param name="Findings">What was left out, and a unit that had to be guessed.</param>
public sealed record SvgLines(IReadOnlyList<RawContour> Contours, IReadOnlyList<Finding> Findings);
