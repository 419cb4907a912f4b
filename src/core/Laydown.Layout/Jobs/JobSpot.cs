namespace Laydown.Layout.Jobs;

/// <summary>Where one copy of a piece lies.</summary>
/// <remarks>The piece is turned counter-clockwise by the angle and then moved so that the lower left corner of the upright rectangle around it lies at x, y.</remarks>
/// <param name="PieceId">Which piece.</param>
/// <param name="Copy">Which of its copies, from 1 over all sheets; the repeats of a sheet use up the numbers that follow.</param>
/// <param name="XMm">Left edge of the turned piece, mm from the left edge of the stock.</param>
/// <param name="YMm">Lower edge of the turned piece, mm from the lower edge of the stock; on a roll along it.</param>
/// <param name="AngleDegrees">Turn counter-clockwise, degrees, 0 to under 360.</param>
public sealed record JobSpot(string PieceId, int Copy, double XMm, double YMm, double AngleDegrees);
