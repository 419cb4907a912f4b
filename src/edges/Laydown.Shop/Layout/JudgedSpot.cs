namespace Laydown.Shop.Layout;

/// <summary>A piece on a judged sheet, with its room for hems, pockets, cut marks and labels.</summary>
/// <param name="PieceId">Which piece.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Copy">Which of its copies, from 1 over all sheets.</param>
/// <param name="XMm">Left edge, mm from the sheet's lower left corner.</param>
/// <param name="YMm">Lower edge, mm.</param>
/// <param name="WidthMm">Width as it lies, mm.</param>
/// <param name="HeightMm">Height as it lies, mm.</param>
/// <param name="Angle">How far it is turned counter-clockwise, degrees.</param>
/// <param name="Locked">Whether it must stay.</param>
public sealed record JudgedSpot(
    string PieceId, string Name, int Copy, double XMm, double YMm, double WidthMm, double HeightMm, int Angle, bool Locked);
