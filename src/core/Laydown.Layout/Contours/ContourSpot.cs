namespace Laydown.Layout.Contours;

/// <summary>Where one copy of a piece lies.</summary>
/// <remarks>
/// A point p of the piece as drawn lies at R(angle) p + (<paramref name="XMm"/>, <paramref name="YMm"/>), R turning counter-clockwise
/// about the origin of the piece's own coordinates. On a strip x runs along it, on a board the coordinates are those of its shape.
/// </remarks>
/// <param name="PieceId">Which piece.</param>
/// <param name="Copy">Which of its copies, from 1 over all sheets.</param>
/// <param name="XMm">Shift to the right, mm.</param>
/// <param name="YMm">Shift upward, mm.</param>
/// <param name="AngleDegrees">Turn counter-clockwise, degrees, 0 to under 360.</param>
public sealed record ContourSpot(string PieceId, int Copy, double XMm, double YMm, double AngleDegrees);
