using Laydown.Measures;

namespace Laydown.Layout.Marks;

/// <summary>One printed mark.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="PieceId">The piece it belongs to; empty for marks of the sheet.</param>
/// <param name="Copy">Which copy; 0 for marks of the sheet.</param>
/// <param name="Box">Where it lies with its bare ground, mm from the sheet's lower left corner.</param>
/// <param name="InkMm">Width of the line, or diameter of the disc or ring, mm; 0 for words and codes, which fill their box.</param>
/// <param name="Upright">Whether a line runs upright, or words read from below upward.</param>
/// <param name="Text">Words, or what a code says; empty for others.</param>
public sealed record SheetMark(MarkKind Kind, string PieceId, int Copy, RectMm Box, double InkMm, bool Upright, string Text);
