using NetTopologySuite.Geometries;

namespace Laydown.Geometry.Outlines;

/// <summary>A sound ring and where it stands in its file.</summary>
/// <param name="Field">Where.</param>
/// <param name="Ring">A polygon without holes.</param>
internal sealed record MendedRing(string Field, Polygon Ring);
