using Laydown.Measures;

namespace Laydown.Layout.Sheets;

/// <summary>One piece on one sheet.</summary>
/// <param name="PieceId">Which piece.</param>
/// <param name="Copy">Which of its copies, from 1 over all sheets.</param>
/// <param name="Place">Printed rectangle on the sheet, mm from the sheet's lower left corner.</param>
/// <param name="Turned">Whether it lies turned by 90° counter-clockwise.</param>
/// <param name="Part">For a panel, the part of the item's printed picture shown; null for the whole.</param>
public sealed record Placement(string PieceId, int Copy, RectMm Place, bool Turned, RectMm? Part = null);
