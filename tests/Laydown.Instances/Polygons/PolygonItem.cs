using NetTopologySuite.Geometries;

namespace Laydown.Instances.Polygons;

/// <summary>A wanted shape of an instance.</summary>
/// <param name="Shape">The shape as drawn, perhaps with holes.</param>
/// <param name="Copies">How many are wanted.</param>
/// <param name="Degrees">Angles it may be turned to, counter-clockwise; null for any.</param>
public sealed record PolygonItem(Polygon Shape, int Copies, IReadOnlyList<double>? Degrees);
