using Laydown.Geometry.Shapes;
using Laydown.Measures;
using NetTopologySuite.Operation.Buffer;
using NetTopologySuite.Simplify;

namespace Laydown.Geometry.Outlines;

/// <summary>Takes corners away from a shape without ever cutting into it.</summary>
/// <remarks>
/// The shape is grown by half the tolerance and corners are then left out as long as the line stays within the other half: so the result holds
/// the shape and reaches no farther than the tolerance beyond it, sharp corners apart, which may reach twice as far. [DouglasPeucker1973]
/// </remarks>
public static class OutwardSimplifying
{
    /// <summary>The shape with fewer corners; the shape itself where that would gain nothing.</summary>
    /// <param name="shape">Any shape.</param>
    /// <param name="toleranceMm">How far the result may reach beyond it, mm; over 0.</param>
    public static Shape Simplify(Shape shape, double toleranceMm)
    {
        ArgumentNullException.ThrowIfNull(shape);
        Bounds.Within(toleranceMm, 1e-6, 1000);
        BufferParameters mitred = new(1, EndCapStyle.Flat, JoinStyle.Mitre, 2);
        NetTopologySuite.Geometries.Geometry grown = shape.Area.Buffer(toleranceMm / 2, mitred);
        NetTopologySuite.Geometries.Geometry simple = TopologyPreservingSimplifier.Simplify(grown, toleranceMm / 2 * 0.999);
        return simple.NumPoints < shape.Area.NumPoints && simple.IsValid && simple.Covers(shape.Area) ? Shape.Wrap(simple) : shape;
    }
}
