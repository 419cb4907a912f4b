using Laydown.Geometry.Shapes;
using Laydown.Measures;

namespace Laydown.Layout.Judging;

/// <summary>A piece as it lies on a sheet.</summary>
/// <param name="Box">The upright rectangle around it, mm on the sheet.</param>
/// <param name="Area">Its shape, mm on the sheet; null where it fills its rectangle.</param>
public sealed record LyingPiece(RectMm Box, Shape? Area = null)
{
    /// <summary>Its shape in any case.</summary>
    public Shape Shape => Area ?? Shape.Of(Box);
}
