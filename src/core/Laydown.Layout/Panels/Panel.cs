using Laydown.Measures;

namespace Laydown.Layout.Panels;

/// <summary>One panel of a graphic.</summary>
/// <param name="Number">From 1, in the order of printing and hanging: a panel lies over its neighbours of lower number.</param>
/// <param name="Column">Column from 1, from the left.</param>
/// <param name="Row">Row from 1, from the bottom, within its column.</param>
/// <param name="Part">What it shows of the printed graphic, mm from the graphic's lower left corner.</param>
public sealed record Panel(int Number, int Column, int Row, RectMm Part);
