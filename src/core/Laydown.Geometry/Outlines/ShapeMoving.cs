using Laydown.Geometry.Shapes;
using NetTopologySuite.Geometries.Utilities;

namespace Laydown.Geometry.Outlines;

/// <summary>Turns and moves shapes. Quarter turns are exact: no corner is rounded.</summary>
public static class ShapeMoving
{
    /// <summary>The shape turned counter-clockwise about the origin.</summary>
    /// <param name="shape">Any shape.</param>
    /// <param name="degrees">How far.</param>
    public static Shape Turned(Shape shape, double degrees)
    {
        ArgumentNullException.ThrowIfNull(shape);
        (double sin, double cos) = (((degrees % 360) + 360) % 360) switch
        {
            0 => (0.0, 1.0),
            90 => (1, 0),
            180 => (0, -1),
            270 => (-1, 0),
            double other => Math.SinCos(other * Math.PI / 180),
        };
        return Shape.Wrap(new AffineTransformation(cos, -sin, 0, sin, cos, 0).Transform(shape.Area));
    }

    /// <summary>The shape moved.</summary>
    /// <param name="shape">Any shape.</param>
    /// <param name="xMm">To the right, mm.</param>
    /// <param name="yMm">Upward, mm.</param>
    public static Shape Moved(Shape shape, double xMm, double yMm)
    {
        ArgumentNullException.ThrowIfNull(shape);
        return Shape.Wrap(AffineTransformation.TranslationInstance(xMm, yMm).Transform(shape.Area));
    }
}
