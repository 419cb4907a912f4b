using Laydown.Measures;
using NetTopologySuite.Geometries;

namespace Laydown.Geometry.Shapes;

/// <summary>What the shapes of this wall share with the geometry library.</summary>
internal static class Planar
{
    /// <summary>Makes the library's geometries: plain double precision, no reference system.</summary>
    internal static GeometryFactory Factory { get; } = new();

    internal static RectMm Rect(Envelope box) => box.IsNull ? default : new(box.MinX, box.MinY, box.Width, box.Height);
}
