using Laydown.Measures;

namespace Laydown.Layout.Contours;

/// <summary>Upright rectangles around pieces as they are turned.</summary>
internal static class PieceBox
{
    /// <summary>The rectangle around a piece turned about the origin of its own coordinates.</summary>
    internal static RectMm At(ContourPiece piece, double degrees)
    {
        (double sin, double cos) = Turned.SinCos(degrees);
        double left = double.MaxValue, bottom = double.MaxValue, right = double.MinValue, top = double.MinValue;
        foreach (PointMm p in piece.Area.OuterRings().SelectMany(r => r.Points))
        {
            (double x, double y) = ((cos * p.XMm) - (sin * p.YMm), (sin * p.XMm) + (cos * p.YMm));
            (left, right, bottom, top) = (Math.Min(left, x), Math.Max(right, x), Math.Min(bottom, y), Math.Max(top, y));
        }

        return new(left, bottom, right - left, top - bottom);
    }

    /// <summary>The rectangle around a piece where it lies.</summary>
    internal static RectMm Of(ContourPiece piece, ContourSpot spot)
    {
        RectMm box = At(piece, spot.AngleDegrees);
        return box with { XMm = box.XMm + spot.XMm, YMm = box.YMm + spot.YMm };
    }
}
