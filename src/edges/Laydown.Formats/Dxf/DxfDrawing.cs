using Laydown.Geometry.Outlines;
using Laydown.Measures;

namespace Laydown.Formats.Dxf;

/// <summary>The lines of a DXF file.</summary>
/// <param name="Contours">Lines in the order of the file, mm, y upward, curves flattened.</param>
/// <param name="Findings">What was converted or left out: units, entities of other kinds.</param>
public sealed record DxfDrawing(IReadOnlyList<RawContour> Contours, IReadOnlyList<Finding> Findings);
