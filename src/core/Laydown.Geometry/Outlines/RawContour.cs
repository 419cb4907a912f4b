using Laydown.Measures;

namespace Laydown.Geometry.Outlines;

/// <summary>A line as it came from a file, nothing checked.</summary>
/// <param name="Field">Where in the file it stands, for faults, such as <c>entity 12, LINE</c>.</param>
/// <param name="Points">Its corners, mm, curves flattened; any number, any values.</param>
/// <param name="Closed">Whether it is said to return to its first corner.</param>
public sealed record RawContour(string Field, IReadOnlyList<PointMm> Points, bool Closed);
