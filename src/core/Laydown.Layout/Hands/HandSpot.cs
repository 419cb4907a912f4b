namespace Laydown.Layout.Hands;

/// <summary>A piece as a person laid it down; its size is that of the piece, so that nobody can change it by hand.</summary>
/// <param name="PieceId">Which piece.</param>
/// <param name="XMm">Left edge of the printed rectangle, mm from the sheet's lower left corner.</param>
/// <param name="YMm">Lower edge, mm.</param>
/// <param name="Turned">Whether it lies turned by 90° counter-clockwise.</param>
/// <param name="Locked">Whether it must stay where it lies when the rest is laid out anew.</param>
public sealed record HandSpot(string PieceId, double XMm, double YMm, bool Turned = false, bool Locked = false);
